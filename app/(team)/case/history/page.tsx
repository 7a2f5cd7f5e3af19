import type { Metadata } from 'next'
import { HistoryScreen } from '../../../cases/history/HistoryScreen'

export const metadata: Metadata = { title: 'Case history' }

export default function HistoryPage() {
  return <HistoryScreen />
}
