import type { Metadata } from 'next'
import { CallbacksScreen } from '../../callbacks/CallbacksScreen'

export const metadata: Metadata = { title: 'Callbacks' }

export default function CallbacksPage() {
  return <CallbacksScreen />
}
