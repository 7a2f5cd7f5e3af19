import type { Metadata } from 'next'
import { PreferencesScreen } from '../../preferences/PreferencesScreen'

export const metadata: Metadata = { title: 'Preferences' }

export default function PreferencesPage() {
  return <PreferencesScreen />
}
