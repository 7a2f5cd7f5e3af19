import { type DangerReadings, dangerIn } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import { airFreeOf } from '../case/dangers'
import { isIn, type Period } from './period'

/** Something that could have hurt people, as one record says it. */
export type SafetyEvent = {
  what:
    | 'left off and tagged'
    | 'left off, no tag on record'
    | 'CO in the room'
    | 'CO in the flue'
    | 'jumper or bypass'
  /** The record. */
  id: string
  /** ISO 8601. */
  at: string
  furnaceId: string | undefined
  caseId: string | undefined
}

/**
 * Shut-down notices and whether the furnace was tagged, CO above its limit in room or flue, and jumpers found, the
 * newest first. A jumper that was recorded as found fitted and tapped as a finding on the same furnace and day is one.
 */
export function safetyEvents(file: TeamFile, period: Period): SafetyEvent[] {
  const notices = counting(file.shutDownNotices).map(({ id, at, body }): SafetyEvent => {
    const what = body.tagged ? 'left off and tagged' : 'left off, no tag on record'
    return { what, id, at, furnaceId: file.keptId(body.furnaceId), caseId: body.caseId }
  })
  const tests = counting(file.combustionTests).flatMap((entry) =>
    highIn(entry).map(
      (what): SafetyEvent => ({
        what,
        id: entry.id,
        at: entry.at,
        furnaceId: file.keptId(entry.body.furnaceId),
        caseId: entry.body.caseId,
      }),
    ),
  )
  return [...notices, ...tests, ...jumpers(file)]
    .filter(({ at }) => isIn(period, Date.parse(at)))
    .toSorted((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.id < b.id ? -1 : 1))
}

function highIn({ body }: Entry<CombustionTestBody>): SafetyEvent['what'][] {
  const { roomCoPpm, roomCoLimitPpm, flueCoPpm, flueCoLimitPpm } = body
  const isHigh = (readings: DangerReadings) => dangerIn([], readings).length > 0
  return [
    ...(roomCoPpm !== undefined &&
    roomCoLimitPpm !== undefined &&
    isHigh({ roomCo: { ppm: roomCoPpm, employersLimitPpm: roomCoLimitPpm } })
      ? (['CO in the room'] as const)
      : []),
    // Without a limit of the unit's own it is still held against the one that no limit goes above.
    ...(flueCoPpm.length > 0 &&
    isHigh({ flueCo: { ppm: airFreeOf(body), limitPpm: flueCoLimitPpm ?? Number.MAX_VALUE } })
      ? (['CO in the flue'] as const)
      : []),
  ]
}

function jumpers(file: TeamFile): SafetyEvent[] {
  const what = 'jumper or bypass' as const
  const fitted = counting(file.foundFitted)
    .filter(({ body }) => body.what === what)
    .map(({ id, at, body }): SafetyEvent => {
      const furnaceId = body.furnaceId === undefined ? undefined : file.keptId(body.furnaceId)
      return { what, id, at, furnaceId, caseId: undefined }
    })
  const seen = counting(file.findings)
    .filter(({ body }) => body.finding === 'jumper-or-bypass' && body.value === 'seen')
    .flatMap(({ id, at, body }): SafetyEvent[] => {
      const ofCase = file.cases.get(file.keptId(body.caseId))
      return ofCase === undefined
        ? []
        : [{ what, id, at, furnaceId: file.keptId(ofCase.body.furnaceId), caseId: ofCase.id }]
    })
  const dayOf = ({ id, at, furnaceId = id }: SafetyEvent) =>
    `${furnaceId} ${at.slice(0, 'yyyy-mm-dd'.length)}`
  const firstOfDay = new Map<string, SafetyEvent>()
  for (const event of [...seen, ...fitted])
    if (!firstOfDay.has(dayOf(event))) firstOfDay.set(dayOf(event), event)
  return [...firstOfDay.values()]
}
