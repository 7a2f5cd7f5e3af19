import type { Metadata } from 'next'
import { ScanScreen } from '../../scan/ScanScreen'

export const metadata: Metadata = { title: 'Scan a code' }

export default function ScanPage() {
  return <ScanScreen />
}
