import type { FurnaceForRating } from '@/lib/core/rating'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { heights } from '@/lib/records/heights'

/** What a setpoint's address says: which position, and what is known of the furnace. It survives reload and sharing. */
export type SetpointAddress = {
  positionId: string
  furnaceId?: string
  elevationMetres?: number
  revision?: string
  serial?: string
  partNumber?: string
}

type Reader = { get(name: string): string | null }

/** A height at which no furnace can stand is none. */
function elevationFrom(text: string | null): number | undefined {
  const metres = text === null || text.trim() === '' ? Number.NaN : Number(text)
  return metres >= heights.lowest && metres <= heights.highest ? metres : undefined
}

/** Reads an address; a part of it that cannot be read is left out, and the screen asks for it again. */
export function readSetpointAddress(query: Reader): SetpointAddress | undefined {
  const positionId = query.get('position')
  if (positionId === null) return undefined
  return {
    positionId,
    furnaceId: query.get('furnace') ?? undefined,
    elevationMetres: elevationFrom(query.get('elevation')),
    revision: query.get('revision') ?? undefined,
    serial: query.get('serial') ?? undefined,
    partNumber: query.get('part') ?? undefined,
  }
}

/** The query of an address, in one fixed order, so that the same look-up always has the same address. */
export function setpointQuery(address: SetpointAddress): string {
  const query = new URLSearchParams({ position: address.positionId })
  const set = (name: string, value: string | number | undefined) => {
    if (value !== undefined && value !== '') query.set(name, String(value))
  }
  set('furnace', address.furnaceId)
  set('elevation', address.elevationMetres)
  set('revision', address.revision)
  set('serial', address.serial)
  set('part', address.partNumber)
  return query.toString()
}

/** The pages whose answer depends on the furnace. */
export type SetpointPage = '/setpoint' | '/compare'

export const setpointHref = (address: SetpointAddress, page: SetpointPage = '/setpoint'): string =>
  `${page}?${setpointQuery(address)}`

/** What the weighing is told of the furnace: the furnace's own record first, then what the address adds. */
export function furnaceOf(file: TeamFile, address: Omit<SetpointAddress, 'positionId'>): FurnaceForRating {
  const id = address.furnaceId === undefined ? undefined : file.keptId(address.furnaceId)
  const onFile = id === undefined ? undefined : file.furnaces.get(id)?.body
  const known = {
    id,
    elevationMetres: onFile?.elevationMetres ?? address.elevationMetres,
    revision: onFile?.revision ?? address.revision,
    serial: onFile?.serial ?? address.serial,
    partNumber: address.partNumber,
  }
  return Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined))
}
