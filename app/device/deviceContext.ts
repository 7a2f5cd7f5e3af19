'use client'

import { createContext, useContext, useSyncExternalStore } from 'react'
import type { Device, DeviceState } from '@/lib/device/device'

/** The device of the person who is signed in here. Screens below DeviceProvider always have one. */
export const DeviceContext = createContext<Device | undefined>(undefined)

export function useDevice(): Device {
  const device = useContext(DeviceContext)
  if (device === undefined) throw new RangeError('useDevice: the screen is not inside a DeviceProvider')
  return device
}

/** What the device holds now. The component is drawn again whenever any of it changes. */
export function useDeviceState(): DeviceState {
  const device = useDevice()
  return useSyncExternalStore(device.subscribe, device.state, device.state)
}
