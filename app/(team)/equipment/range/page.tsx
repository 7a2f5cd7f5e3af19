import type { Metadata } from 'next'
import { RangeScreen } from '../../../equipment/RangeScreen'

export const metadata: Metadata = { title: 'Furnace range' }

export default function RangePage() {
  return <RangeScreen />
}
