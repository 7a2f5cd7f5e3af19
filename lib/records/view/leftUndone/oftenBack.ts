import { usualCallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import { dayMs } from '@/lib/core/callbacks/heatingSeason'
import { type Repeat, repeatsOf } from '@/lib/core/callbacks/repeatsOf'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { casesOfTeam } from '../callbacks/caseFacts'

/** A furnace that came back again and again. */
export type OftenBack = {
  furnace: Entry<FurnaceBody>
  /** Oldest first. */
  repeats: readonly Repeat[]
  /** When the newest callback was opened, ISO 8601. */
  lastAt: string
}

/** So many repeats are asked about, and of so many days (common practice, no published source). */
export const oftenBackRepeats = 2
export const oftenBackDays = 365

/** Furnaces with two or more callbacks opened within the last year, most of them first, then the newest. */
export function oftenBack(file: TeamFile, now: string): OftenBack[] {
  const cases = casesOfTeam(file)
  const openedAt = new Map(cases.map((one) => [one.id, one.openedAt]))
  const [from, until] = [Date.parse(now) - oftenBackDays * dayMs, Date.parse(now)]
  const byFurnace = new Map<string, Repeat[]>()
  for (const repeat of repeatsOf(cases, usualCallbackWindow)) {
    const at = openedAt.get(repeat.laterId)!
    if (at < from || at > until) continue
    byFurnace.set(repeat.furnaceId, [...(byFurnace.get(repeat.furnaceId) ?? []), repeat])
  }
  return [...byFurnace]
    .filter(([, repeats]) => repeats.length >= oftenBackRepeats)
    .flatMap(([id, repeats]) => {
      const furnace = file.furnaces.get(id)
      const lastAt = new Date(openedAt.get(repeats.at(-1)!.laterId)!).toISOString()
      return furnace === undefined ? [] : [{ furnace, repeats, lastAt }]
    })
    .toSorted((a, b) => b.repeats.length - a.repeats.length || (a.lastAt < b.lastAt ? 1 : -1))
}
