import type { Metadata } from 'next'
import { EquipmentScreen } from '../../equipment/EquipmentScreen'

export const metadata: Metadata = { title: 'Equipment' }

export default function EquipmentPage() {
  return <EquipmentScreen />
}
