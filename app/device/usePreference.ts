'use client'

import type { PreferenceBody } from '@/lib/records/kinds/preference'
import { useDeviceState } from './deviceContext'

const usual: PreferenceBody = { unit: 'inH2O', theme: 'system' }

/** The signed-in person's own settings; inches of water column and the device's theme until they choose. */
export function usePreference(): PreferenceBody {
  const { file, me } = useDeviceState()
  return file.preferences.get(me.id) ?? usual
}
