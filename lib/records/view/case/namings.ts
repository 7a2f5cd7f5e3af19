import { heatingSeasonDays, usualHeatingSeason } from '@/lib/core/callbacks/heatingSeason'
import type { CauseStatus, NamedCause } from '@/lib/core/diagnosis'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { type CaseFile, casesOf } from './caseFile'
import type { CaseView } from './caseView'
import { endingFactsOf } from './endingFacts'
import { endingNeeds } from './endingNeeds'
import { leftOffWithoutNotice } from './leftOff'
import { noticesOf } from './notices'

/** How long a repair has to stay quiet before its cause is called durable, in heating-season days. */
const quietDays = 30

/** What the end of a visit said of the cause: an ending that names one, or two endings that stand side by side. */
type Naming = { at: string; ending: Entry<EndingBody> | 'disagreement' }

/** Each visit that named a cause or ended in a disagreement, oldest first. */
export const namingsIn = ({ visits }: CaseFile): Naming[] =>
  visits.flatMap(({ endings }): Naming[] => {
    const last = endings.at(-1)
    if (last === undefined) return []
    if (endings.length > 1) return [{ at: last.at, ending: 'disagreement' }]
    return last.body.mainCause === undefined ? [] : [{ at: last.at, ending: last }]
  })

/** The cause that an ending names, and how well it is known. @throws RangeError when it names none */
export function namedBy(ending: Entry<EndingBody>, status: CauseStatus): NamedCause {
  const { mainCause, contributingCause } = ending.body
  if (mainCause === undefined) throw new RangeError('namedBy requires an ending that names a cause')
  return {
    main: mainCause,
    ...(contributingCause === undefined || contributingCause === mainCause
      ? {}
      : { contributing: contributingCause }),
    status,
  }
}

/** Whether the visit ended as repaired and proven, with all that this asks for. */
export const isProven = (
  team: TeamFile,
  { file, judgedThatDay }: Pick<CaseView, 'file' | 'judgedThatDay'>,
  ending: Entry<EndingBody>,
): boolean =>
  ending.body.how === 'repaired and proven' &&
  endingNeeds(ending.body, endingFactsOf(team, file, ending, judgedThatDay)).length === 0

/**
 * Whether the furnace stayed quiet after an ending, for `quietDays` of heating season, until the next visit of this
 * case, the next case about the same circuit, or now. One that is left off is not quiet: it is counted from when its
 * notice was lifted, and to the next one.
 */
export function stayedQuiet(
  team: TeamFile,
  { entry, furnace, visits }: CaseFile,
  ending: Entry<EndingBody>,
  now: string,
): boolean {
  const nextCase = casesOf(team, furnace.id).find(
    (other) => other.at > ending.at && other.id !== entry.id && other.body.circuit === entry.body.circuit,
  )
  const nextVisit = visits.find((visit) => visit.entry.at > ending.at)
  const offs = [
    ...noticesOf(team, furnace.id).map(({ entry: { at }, lifting }) => ({ at, litAt: lifting?.at })),
    ...leftOffWithoutNotice(team, furnace.id).map(({ at }) => ({ at, litAt: undefined })),
  ]
  const litAt = offs.filter(({ at }) => at <= ending.at).map((off) => off.litAt)
  if (litAt.includes(undefined)) return false
  const from = [ending.at, ...litAt.filter((moment) => moment !== undefined)].sort().at(-1)!
  const nextOff = offs.map(({ at }) => at).filter((at) => at > ending.at)
  const until = [nextCase?.at, nextVisit?.entry.at, ...nextOff, now]
    .filter((moment) => moment !== undefined)
    .sort()[0]!
  // A device whose clock is slow can be asked before what it has been told.
  return (
    until > from && heatingSeasonDays(Date.parse(from), Date.parse(until), usualHeatingSeason) >= quietDays
  )
}
