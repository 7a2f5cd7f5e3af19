import type { Metadata } from 'next'
import { JoinScreen } from '../../../equipment/JoinScreen'

export const metadata: Metadata = { title: 'Join duplicates' }

export default function JoinPage() {
  return <JoinScreen />
}
