import type { Metadata } from 'next'
import { CompareScreen } from '../../compare/CompareScreen'

export const metadata: Metadata = { title: 'Compare a reading' }

export default function ComparePage() {
  return <CompareScreen />
}
