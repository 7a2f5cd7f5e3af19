import type { Metadata } from 'next'
import { SourcesScreen } from '../../sources/SourcesScreen'

export const metadata: Metadata = { title: 'How sources have held' }

export default function SourcesPage() {
  return <SourcesScreen />
}
