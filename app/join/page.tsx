import type { Metadata } from 'next'
import { LinkScreen } from '../door/LinkScreen'

export const metadata: Metadata = { title: 'Join' }

export default function JoinPage() {
  return <LinkScreen />
}
