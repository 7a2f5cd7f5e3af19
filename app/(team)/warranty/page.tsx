import type { Metadata } from 'next'
import { WarrantyScreen } from '../../warranty/WarrantyScreen'

export const metadata: Metadata = { title: 'Record a warranty answer' }

export default function WarrantyPage() {
  return <WarrantyScreen />
}
