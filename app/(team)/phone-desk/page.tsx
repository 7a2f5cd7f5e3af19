import type { Metadata } from 'next'
import { PhoneDeskScreen } from '../../phoneDesk/PhoneDeskScreen'

export const metadata: Metadata = { title: 'Phone desk' }

export default function PhoneDeskPage() {
  return <PhoneDeskScreen />
}
