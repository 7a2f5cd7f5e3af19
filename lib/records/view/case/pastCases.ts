import { observationsOnList } from '@/lib/catalogue/findings/readableFinding'
import type { NamedCause, Observations, PastCase, ReplayCase } from '@/lib/core/diagnosis'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from './caseFile'
import { type CaseView, caseViewOf } from './caseView'
import { contextOf } from './context'
import type { JudgedReading } from './judgedReading'
import { isProven, namedBy, namingsIn, stayedQuiet } from './namings'
import { observedIn, observedInReadings } from './observed'

/**
 * The cases that teach the ranking: those whose visit ended with a cause. Their findings are those said before the
 * last repair, because what is seen after it describes a mended furnace.
 * @param except a case being worked on: it does not teach itself
 */
export function pastCases(file: TeamFile, now: string, except?: string): PastCase[] {
  return counting(file.cases).flatMap(({ id }) => {
    if (id === except) return []
    const view = caseViewOf(file, id)
    const cause = view && causeOf(file, view, now)
    if (view === undefined || cause === undefined) return []
    const findings = observationsOnList(observedIn(foundWhileFaulty(view.file), readWhileFaulty(view)))
    return [{ id, findings, context: contextOf(file, view.file), cause }]
  })
}

/** What was said of the findings before the furnace was last repaired, oldest first. */
function foundWhileFaulty({ findings, repairs }: CaseFile): CaseFile['findings'] {
  const lastRepair = repairs.at(-1)?.at
  return findings.filter(({ at }) => lastRepair === undefined || at < lastRepair)
}

/** The readings as found of the visits up to that of the last repair. */
function readWhileFaulty({ file: { visits, repairs }, judged }: CaseView): JudgedReading[] {
  const repairedOn = visits.findLastIndex(({ entry }) =>
    repairs.some(({ body }) => body.visitId === entry.id),
  )
  const later = new Set<string | undefined>(
    repairedOn < 0 ? [] : visits.slice(repairedOn + 1).map(({ entry }) => entry.id),
  )
  return judged.filter(({ entry }) => entry.body.when === 'as found' && !later.has(entry.body.visitId))
}

/**
 * The cause of a case and how well it is known: presumed until after-readings prove the repair, confirmed then, and
 * durable once the furnace has stayed quiet. Undefined while nobody has named one, or while the newest visit that did
 * has two endings.
 */
export function causeOf(team: TeamFile, view: CaseView, now: string): NamedCause | undefined {
  const ending = namingsIn(view.file).at(-1)?.ending
  if (ending === undefined || ending === 'disagreement') return undefined
  if (!isProven(team, view, ending)) return namedBy(ending, 'presumed')
  return namedBy(ending, stayedQuiet(team, view.file, ending, now) ? 'durable' : 'confirmed')
}

/** A case with the history of what was said, so that the helper can be replayed against it; undefined as caseViewOf. */
export function replayCaseOf(team: TeamFile, id: string): ReplayCase | undefined {
  const view = caseViewOf(team, id)
  return (
    view && {
      id: view.file.entry.id,
      openedAt: Date.parse(view.file.entry.at),
      context: contextOf(team, view.file),
      findings: [...measuredByVisit(view), ...tapped(view.file)],
      causes: namingsIn(view.file).map((naming) => ({
        says: naming.ending === 'disagreement' ? 'withdrawn' : namedThatDay(team, view, naming.ending),
        ...times(naming.at),
      })),
    }
  )
}

/** Every case that counts, so that the helper can be replayed against all of them. */
export const replayCases = (team: TeamFile): ReplayCase[] =>
  counting(team.cases).flatMap(({ id }) => replayCaseOf(team, id) ?? [])

/** Nothing is durable on the day of the ending. It makes no difference to a forecast: both count alike. */
const namedThatDay = (team: TeamFile, view: CaseView, ending: Parameters<typeof namedBy>[0]): NamedCause =>
  namedBy(ending, isProven(team, view, ending) ? 'confirmed' : 'presumed')

/** What had been measured by the end of each visit, as said with its last reading. */
function measuredByVisit(view: CaseView): ReplayCase['findings'] {
  const readings = readWhileFaulty(view)
  const lastOfVisit = new Map(readings.map(({ entry }) => [entry.body.visitId, entry.at]))
  return [...lastOfVisit.values()].flatMap((moment) =>
    onList(observedInReadings(readings.filter(({ entry }) => entry.at <= moment)), moment),
  )
}

const tapped = (file: CaseFile): ReplayCase['findings'] =>
  foundWhileFaulty(file).flatMap(({ body, at }) => onList({ [body.finding]: body.value }, at))

/** Findings that the catalogue of today can weigh. A retired one stays readable and is not replayed. */
const onList = (observed: Observations, moment: string): ReplayCase['findings'][number][] =>
  Object.entries(observationsOnList(observed)).map(([finding, value]) => ({
    finding,
    value,
    ...times(moment),
  }))

/** A record's own moment stands for its arrival: the log's clock is put right already. */
const times = (moment: string) => ({ saidAt: Date.parse(moment), receivedAt: Date.parse(moment) })
