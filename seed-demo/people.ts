import type { Role } from '@/lib/records/envelope'
import type { Branch } from './names'

export type PersonKey = 'ragna' | 'piet' | 'dunja' | 'ott' | 'sunniva' | 'tobin' | 'lale'

export type DemoPerson = {
  id: string
  name: string
  role: Role
  branch: Branch
  device: string
  /** Printed at every start of the demo, so it protects nothing: it is for the demo folder alone. */
  password: string
}

/** Who works at the demo company. Invented; resembling nobody as far as we know. */
export const demoPeople: Readonly<Record<PersonKey, DemoPerson>> = {
  ragna: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b001',
    name: 'Ragna Ellstrop',
    role: 'manager',
    branch: 'Quarlfoot',
    device: 'desk-quarlfoot-1',
    password: 'lantern gravel teacup',
  },
  piet: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b002',
    name: 'Piet Corrowan',
    role: 'dispatcher',
    branch: 'Quarlfoot',
    device: 'desk-quarlfoot-2',
    password: 'pencil harbour mitten',
  },
  dunja: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b003',
    name: 'Dunja Maskeld',
    role: 'dispatcher',
    branch: 'Dunmarrow',
    device: 'desk-dunmarrow-1',
    password: 'copper orchard whistle',
  },
  ott: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b004',
    name: 'Ott Varnley',
    role: 'technician',
    branch: 'Quarlfoot',
    device: 'phone-ott',
    password: 'blanket thimble river',
  },
  sunniva: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b005',
    name: 'Sunniva Prask',
    role: 'technician',
    branch: 'Dunmarrow',
    device: 'phone-sunniva',
    password: 'saddle cinnamon bridge',
  },
  tobin: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b006',
    name: 'Tobin Achterlee',
    role: 'technician',
    branch: 'Dunmarrow',
    device: 'phone-tobin',
    password: 'walnut ladder morning',
  },
  lale: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0b007',
    name: 'Lale Quennor',
    role: 'technician',
    branch: 'Upper Vennet',
    device: 'phone-lale',
    password: 'glacier button violin',
  },
}
