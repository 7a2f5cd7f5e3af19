import type { Metadata } from 'next'
import { FoundFittedScreen } from '../../foundFitted/FoundFittedScreen'

export const metadata: Metadata = { title: 'Found fitted' }

export default function FoundFittedPage() {
  return <FoundFittedScreen />
}
