import type { TeamFile } from '@/lib/records/fold/teamFile'
import { returnTo } from '../equipment/form/returnTo'
import { type FurnaceForm, freshFurnace, freshReplacement } from './furnaceForm'

type Query = { get(name: string): string | null }

/** What the form starts from: a furnace to be recorded anew, one whose place this one takes, or what is known of it. */
export function freshFor(file: TeamFile, query: Query): FurnaceForm {
  const named = (name: string) => file.furnaces.get(file.keptId(query.get(name) ?? ''))
  const again = named('again')
  if (again !== undefined) return { ...freshFurnace(again.body), twin: `again ${again.id}` }
  const old = named('replaces')
  return {
    ...(old === undefined ? freshFurnace() : freshReplacement(old)),
    rangeId: file.ranges.get(file.keptId(query.get('range') ?? ''))?.id ?? '',
    model: query.get('model') ?? '',
    serial: query.get('serial') ?? '',
  }
}

/** Back to the form that the furnace was missing from, which is told its id; else to the furnace itself. */
export function whereNext(query: Query, id: string): string {
  const back = returnTo(query, '')
  return back === '' ? `/furnace?id=${id}` : `${back}${back.includes('?') ? '&' : '?'}on=${id}`
}
