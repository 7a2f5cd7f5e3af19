import type { Metadata } from 'next'
import { TagScreen } from '../../tags/TagScreen'

export const metadata: Metadata = { title: 'Furnace tag' }

export default function TagPage() {
  return <TagScreen />
}
