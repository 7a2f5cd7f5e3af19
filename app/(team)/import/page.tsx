import type { Metadata } from 'next'
import { ImportScreen } from '../../oldList/ImportScreen'

export const metadata: Metadata = { title: 'Import an old list' }

export default function ImportPage() {
  return <ImportScreen />
}
