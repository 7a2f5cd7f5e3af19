import type { Metadata } from 'next'
import { WithdrawScreen } from '../../record/WithdrawScreen'

export const metadata: Metadata = { title: 'Withdraw' }

export default function WithdrawPage() {
  return <WithdrawScreen />
}
