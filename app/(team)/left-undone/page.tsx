import type { Metadata } from 'next'
import { LeftUndoneScreen } from '../../callbacks/leftUndone/LeftUndoneScreen'

export const metadata: Metadata = { title: 'Left undone' }

export default function LeftUndonePage() {
  return <LeftUndoneScreen />
}
