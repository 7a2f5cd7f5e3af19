import type { Metadata } from 'next'
import { AddGaugeScreen } from '../../../gauges/AddGaugeScreen'

export const metadata: Metadata = { title: 'Add a gauge' }

export default function AddGaugePage() {
  return <AddGaugeScreen />
}
