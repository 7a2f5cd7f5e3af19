import type { Metadata } from 'next'
import { ApiHelp } from '../../tokens/ApiHelp'

export const metadata: Metadata = { title: 'What a program can ask' }

export default function ApiHelpPage() {
  return <ApiHelp />
}
