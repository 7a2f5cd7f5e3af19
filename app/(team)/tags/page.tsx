import type { Metadata } from 'next'
import { TagSheetsScreen } from '../../tags/TagSheetsScreen'

export const metadata: Metadata = { title: 'Furnace tags' }

export default function TagsPage() {
  return <TagSheetsScreen />
}
