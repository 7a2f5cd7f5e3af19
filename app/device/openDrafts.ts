import type { SaidAt } from '@/lib/device/mending'

/** What stands in the forms of this page, by draft key; a form that nobody has touched stands in none. */
const open = new Map<string, () => object | undefined>()

/** A form says what stands in it, for as long as it is open. @returns takes it away again */
export function holdOpen(key: string, typed: () => object | undefined): () => void {
  open.set(key, typed)
  return () => {
    if (open.get(key) === typed) open.delete(key)
  }
}

/** The parameter of an address that names the refused record which its form mends. */
const mendsParameter = 'mends'

/**
 * What a form was opened for, by its address: the same when it is opened again to mend what was said in it. For the key
 * of its draft.
 */
export function askedFor(query: { toString(): string }): string {
  const parameters = new URLSearchParams(query.toString())
  parameters.delete(mendsParameter)
  return parameters.toString()
}

/** The page's address and what was typed on it, to be kept with what is said there. */
export function saidHere(): SaidAt {
  const asked = askedFor(new URLSearchParams(location.search))
  const query = asked === '' ? '' : `?${asked}`
  const drafts = [...open].flatMap(([key, typed]): [string, unknown][] => {
    const value = typed()
    return value === undefined ? [] : [[key, value]]
  })
  return { address: location.pathname + query, drafts }
}

/** The refused record that this page was opened to mend. */
export const mendedHere = (): string | undefined =>
  new URLSearchParams(location.search).get(mendsParameter) ?? undefined

/** The address of a form that is opened to mend a refused record. */
export const toMend = (address: string, id: string): string =>
  `${address}${address.includes('?') ? '&' : '?'}${mendsParameter}=${encodeURIComponent(id)}`
