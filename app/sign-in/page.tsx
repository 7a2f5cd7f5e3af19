import type { Metadata } from 'next'
import { SignInScreen } from '../door/SignInScreen'

export const metadata: Metadata = { title: 'Sign in' }

export default function SignInPage() {
  return <SignInScreen />
}
