import type { Metadata } from 'next'
import { AddRangeScreen } from '../../../equipment/AddRangeScreen'

export const metadata: Metadata = { title: 'Add a furnace range' }

export default function AddRangePage() {
  return <AddRangeScreen />
}
