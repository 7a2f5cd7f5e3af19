import type { Metadata } from 'next'
import { ExportScreen } from '../../exchange/ExportScreen'

export const metadata: Metadata = { title: 'Export' }

export default function ExportPage() {
  return <ExportScreen />
}
