import type { Metadata } from 'next'
import { SetpointScreen } from '../../setpoint/SetpointScreen'

export const metadata: Metadata = { title: 'Setpoint' }

export default function SetpointPage() {
  return <SetpointScreen />
}
