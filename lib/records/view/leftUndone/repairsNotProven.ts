import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { type CaseFacts, casesOfTeam } from '../callbacks/caseFacts'
import { caseViewOf } from '../case/caseView'

/** A furnace that was repaired and runs, and nothing on record shows that the repair holds. */
export type RepairNotProven = {
  caseId: string
  furnace: Entry<FurnaceBody>
  /** When its last visit ended, ISO 8601. */
  endedAt: string
  /** It was said to be proven, and lacks something. */
  saidProven: boolean
  /** What the ending lacks, as sentences; empty where nobody claimed proof. */
  lacks: readonly string[]
}

/**
 * Cases whose last visit ended as repaired, not proven, or claims proof and lacks something, the oldest first. Where
 * a later case on the same furnace about the same circuit carries on, that one is looked at instead.
 */
export function repairsNotProven(file: TeamFile, now: string): RepairNotProven[] {
  const cases = casesOfTeam(file)
  const until = Date.parse(now)
  const newest = new Map<string, number>()
  for (const one of cases)
    newest.set(keyOf(one), Math.max(newest.get(keyOf(one)) ?? Number.NEGATIVE_INFINITY, one.openedAt))
  return cases
    .filter(
      (one) =>
        one.ended?.how === 'repaired, not proven' &&
        one.ended.at <= until &&
        one.openedAt === newest.get(keyOf(one)),
    )
    .sort((a, b) => a.ended!.at - b.ended!.at || (a.id < b.id ? -1 : 1))
    .flatMap(({ id, furnaceId, ended, trouble }): RepairNotProven[] => {
      const furnace = file.furnaces.get(furnaceId)
      const saidProven = trouble === 'proof lacks something'
      if (furnace === undefined || ended === undefined) return []
      return [
        {
          caseId: id,
          furnace,
          endedAt: new Date(ended.at).toISOString(),
          saidProven,
          lacks: saidProven ? (caseViewOf(file, id)?.missing ?? []) : [],
        },
      ]
    })
}

const keyOf = ({ furnaceId, circuit }: CaseFacts): string => `${furnaceId} ${circuit}`
