import type { Metadata } from 'next'
import { EndScreen } from '../../../cases/end/EndScreen'

export const metadata: Metadata = { title: 'End the visit' }

export default function EndPage() {
  return <EndScreen />
}
