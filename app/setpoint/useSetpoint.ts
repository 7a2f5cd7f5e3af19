'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { ratingSettings, type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { furnaceOf, readSetpointAddress, type SetpointAddress } from './setpointAddress'

export type AddressedSetpoint = {
  address: SetpointAddress | undefined
  setpoint: Setpoint | undefined
  /** When the screen was opened, ISO 8601: the time at which ratings are judged. */
  now: string
}

/** The setpoint that the page's address names, as far as this device has it. */
export function useSetpoint(): AddressedSetpoint {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const address = useMemo(() => readSetpointAddress(query), [query])
  const setpoint = useMemo(
    () =>
      address && setpointOf(file, address.positionId, furnaceOf(file, address), ratingSettings(file, now)),
    [file, address, now],
  )
  return { address, setpoint, now }
}
