import type { Metadata } from 'next'
import { GaugesScreen } from '../../gauges/GaugesScreen'

export const metadata: Metadata = { title: 'Gauges' }

export default function GaugesPage() {
  return <GaugesScreen />
}
