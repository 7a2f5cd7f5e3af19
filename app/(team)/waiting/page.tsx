import type { Metadata } from 'next'
import { WaitingScreen } from '../../waiting/WaitingScreen'

export const metadata: Metadata = { title: 'Still on this device' }

export default function WaitingPage() {
  return <WaitingScreen />
}
