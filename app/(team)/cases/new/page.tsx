import type { Metadata } from 'next'
import { NewCaseScreen } from '../../../cases/new/NewCaseScreen'

export const metadata: Metadata = { title: 'New case' }

export default function NewCasePage() {
  return <NewCaseScreen />
}
