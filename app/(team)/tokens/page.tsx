import type { Metadata } from 'next'
import { TokensScreen } from '../../tokens/TokensScreen'

export const metadata: Metadata = { title: 'Tokens' }

export default function TokensPage() {
  return <TokensScreen />
}
