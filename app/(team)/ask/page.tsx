import type { Metadata } from 'next'
import { AskScreen } from '../../ask/AskScreen'

export const metadata: Metadata = { title: 'Ask for a rating' }

export default function AskPage() {
  return <AskScreen />
}
