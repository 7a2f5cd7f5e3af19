import type { Metadata } from 'next'
import { SettleScreen } from '../../settle/SettleScreen'

export const metadata: Metadata = { title: 'Settle the dispute' }

export default function SettlePage() {
  return <SettleScreen />
}
