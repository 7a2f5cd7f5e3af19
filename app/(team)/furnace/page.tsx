import type { Metadata } from 'next'
import { FurnaceScreen } from '../../furnace/FurnaceScreen'

export const metadata: Metadata = { title: 'Furnace' }

export default function FurnacePage() {
  return <FurnaceScreen />
}
