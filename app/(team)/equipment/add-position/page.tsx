import type { Metadata } from 'next'
import { AddPositionScreen } from '../../../equipment/AddPositionScreen'

export const metadata: Metadata = { title: 'Add a switch position' }

export default function AddPositionPage() {
  return <AddPositionScreen />
}
