import type { Metadata } from 'next'
import { SupersededScreen } from '../../../equipment/SupersededScreen'

export const metadata: Metadata = { title: 'A part is superseded' }

export default function SupersededPage() {
  return <SupersededScreen />
}
