import type { Metadata } from 'next'
import { WithholdScreen } from '../../record/WithholdScreen'

export const metadata: Metadata = { title: 'Withhold personal data' }

export default function WithholdPage() {
  return <WithholdScreen />
}
