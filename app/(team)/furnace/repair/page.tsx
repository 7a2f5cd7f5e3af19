import type { Metadata } from 'next'
import { RepairScreen } from '../../../furnace/RepairScreen'

export const metadata: Metadata = { title: 'Record a repair' }

export default function RepairPage() {
  return <RepairScreen />
}
