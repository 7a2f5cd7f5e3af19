import type { Metadata } from 'next'
import { WorkCaseScreen } from '../../cases/work/WorkCaseScreen'

export const metadata: Metadata = { title: 'Work a case' }

export default function CasePage() {
  return <WorkCaseScreen />
}
