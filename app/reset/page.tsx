import type { Metadata } from 'next'
import { LinkScreen } from '../door/LinkScreen'

export const metadata: Metadata = { title: 'New password' }

export default function ResetPage() {
  return <LinkScreen />
}
