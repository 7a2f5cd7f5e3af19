import type { Metadata } from 'next'
import { AddMakerScreen } from '../../../equipment/AddMakerScreen'

export const metadata: Metadata = { title: 'Add a maker' }

export default function AddMakerPage() {
  return <AddMakerScreen />
}
