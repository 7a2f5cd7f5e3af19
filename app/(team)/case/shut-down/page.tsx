import type { Metadata } from 'next'
import { ShutDownScreen } from '../../../cases/notice/ShutDownScreen'

export const metadata: Metadata = { title: 'Leave the furnace off' }

export default function ShutDownPage() {
  return <ShutDownScreen />
}
