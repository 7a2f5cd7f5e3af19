import type { Metadata } from 'next'
import { AddFurnaceScreen } from '../../../furnace/AddFurnaceScreen'

export const metadata: Metadata = { title: 'Add a furnace' }

export default function AddFurnacePage() {
  return <AddFurnaceScreen />
}
