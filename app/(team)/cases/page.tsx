import type { Metadata } from 'next'
import { CasesScreen } from '../../cases/list/CasesScreen'

export const metadata: Metadata = { title: 'Cases' }

export default function CasesPage() {
  return <CasesScreen />
}
