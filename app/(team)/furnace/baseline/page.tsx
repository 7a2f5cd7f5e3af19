import type { Metadata } from 'next'
import { BaselineScreen } from '../../../furnace/baseline/BaselineScreen'

export const metadata: Metadata = { title: 'Record a baseline' }

export default function BaselinePage() {
  return <BaselineScreen />
}
