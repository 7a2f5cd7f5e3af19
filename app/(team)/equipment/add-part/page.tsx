import type { Metadata } from 'next'
import { AddPartScreen } from '../../../equipment/AddPartScreen'

export const metadata: Metadata = { title: 'Add a part' }

export default function AddPartPage() {
  return <AddPartScreen />
}
