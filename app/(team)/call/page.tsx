import type { Metadata } from 'next'
import { CallScreen } from '../../call/CallScreen'

export const metadata: Metadata = { title: 'Call' }

export default function CallPage() {
  return <CallScreen />
}
