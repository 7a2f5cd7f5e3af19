import type { Metadata } from 'next'
import { HelperScreen } from '../../helper/HelperScreen'

export const metadata: Metadata = { title: 'How good is the helper?' }

export default function HelperPage() {
  return <HelperScreen />
}
