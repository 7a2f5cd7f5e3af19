import { returnTo } from '../equipment/form/returnTo'

/** What the form that sent somebody here wants to be told: which furnace, or the number on a part. */
export type Wanted = 'furnace' | 'part'

type Query = { get(name: string): string | null }

/** What the address of the scanner says. */
export type ScanAddress = {
  /** The form that is waiting, and what it waits for. */
  back?: { to: string; wants: Wanted }
  /** The furnace that the person stands at, if that is known. */
  furnaceId?: string
}

export function readScanAddress(query: Query): ScanAddress {
  const to = returnTo(query, '')
  const wants = query.get('take')
  const furnaceId = query.get('furnace') ?? undefined
  return {
    ...(to !== '' && (wants === 'furnace' || wants === 'part') ? { back: { to, wants } } : {}),
    ...(furnaceId === undefined ? {} : { furnaceId }),
  }
}

/** The form that is waiting, told what it wanted: a furnace by its id as `on`, or what was read as `read`. */
export const answering = (to: string, name: 'on' | 'read', value: string): string =>
  `${to}${to.includes('?') ? '&' : '?'}${new URLSearchParams({ [name]: value })}`
