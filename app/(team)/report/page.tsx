import type { Metadata } from 'next'
import { ReportScreen } from '../../report/ReportScreen'

export const metadata: Metadata = { title: 'Add a report' }

export default function ReportPage() {
  return <ReportScreen />
}
