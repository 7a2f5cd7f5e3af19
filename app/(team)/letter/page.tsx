import type { Metadata } from 'next'
import { LetterScreen } from '../../callbacks/letter/LetterScreen'

export const metadata: Metadata = { title: 'Monthly letter' }

export default function LetterPage() {
  return <LetterScreen />
}
