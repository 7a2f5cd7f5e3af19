import type { Metadata } from 'next'
import { SetAsideScreen } from '../../setAside/SetAsideScreen'

export const metadata: Metadata = { title: 'Set aside' }

export default function SetAsidePage() {
  return <SetAsideScreen />
}
