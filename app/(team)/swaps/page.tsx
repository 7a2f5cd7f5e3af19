import type { Metadata } from 'next'
import { SwapsScreen } from '../../callbacks/swaps/SwapsScreen'

export const metadata: Metadata = { title: 'Switches replaced' }

export default function SwapsPage() {
  return <SwapsScreen />
}
