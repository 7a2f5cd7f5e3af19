import type { ReactNode } from 'react'
import { DeviceProvider } from '../device/DeviceProvider'
import { FreshnessScreen } from '../device/FreshnessScreen'
import { WholeFile } from '../device/WholeFile'

/** Every page of the team: it reads the device's own store, so it works the same with and without a signal. */
export default function TeamLayout({ children }: { children: ReactNode }) {
  return (
    <DeviceProvider>
      <FreshnessScreen />
      <WholeFile>{children}</WholeFile>
    </DeviceProvider>
  )
}
