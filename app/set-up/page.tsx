import type { Metadata } from 'next'
import { SetUpScreen } from '../door/SetUpScreen'

export const metadata: Metadata = { title: 'Set up' }

export default function SetUpPage() {
  return <SetUpScreen />
}
