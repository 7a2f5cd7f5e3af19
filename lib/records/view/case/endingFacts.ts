import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { missingToBlameSwitch } from './blamedSwitch'
import type { CaseFile } from './caseFile'
import { dangersOf } from './dangers'
import type { EndingFacts } from './endingNeeds'
import type { JudgedReading } from './judgedReading'
import { noticeOfEnding } from './leftOff'
import { positionsToProve } from './positionsToProve'

/**
 * What an ending is judged by: the case up to and including its visit, and the furnace as it was then. What is found
 * on a later visit, or years later in another case, takes nothing back from an ending that was finished; lifting a
 * notice and putting a switch right count whenever they come, and so does a switch that was there by the day of the
 * visit and is written down only later.
 */
export function endingFactsOf(
  team: TeamFile,
  file: CaseFile,
  ending: Entry<EndingBody>,
  judged: readonly JudgedReading[],
): EndingFacts {
  const place = file.visits.findIndex(({ entry }) => entry.id === ending.body.visitId)
  const visits = place < 0 ? file.visits : file.visits.slice(0, place + 1)
  // What was said on a visit that was withdrawn since, as a duplicate, was said of this furnace all the same.
  const later = new Set<string | undefined>(
    place < 0 ? [] : file.visits.slice(place + 1).map(({ entry }) => entry.id),
  )
  const upToThen = <Body extends { visitId?: string }>(entries: Entry<Body>[]): Entry<Body>[] =>
    entries.filter(({ body }) => !later.has(body.visitId))
  const day = file.visits[place]?.entry.body.on ?? ''
  const { how, noticeId } = ending.body
  // A notice that is written late is the notice of the ending all the same.
  const own =
    how === 'left off'
      ? noticeOfEnding(file.notices, { noticeId, visitAt: file.visits[place]?.entry.at, endedAt: ending.at })
      : undefined
  const then: CaseFile = {
    ...file,
    visits,
    findings: upToThen(file.findings),
    readings: upToThen(file.readings),
    combustionTests: upToThen(file.combustionTests),
    repairs: upToThen(file.repairs),
    switchChecks: upToThen(file.switchChecks),
    dangerAnswers: upToThen(file.dangerAnswers),
    fittedParts: file.fittedParts.filter(({ at }) => at <= ending.at),
    unsuitable: file.unsuitable.filter(({ at, body }) => at <= ending.at || body.foundOn <= day),
    notices: file.notices.filter(({ entry }) => entry.at <= ending.at || entry.id === own?.entry.id),
    leftOffUnnoticed: file.leftOffUnnoticed.filter(({ at }) => at <= ending.at),
  }
  const kept = new Set(then.readings.map(({ id }) => id))
  const judgedThen = judged.filter(({ entry }) => kept.has(entry.id))
  return {
    file: then,
    judged: judgedThen,
    openDangers: dangersOf(team, then, judgedThen).open,
    toProve: positionsToProve(team, then),
    missingToBlame: (cause) => missingToBlameSwitch(team, then, cause, ending.at),
    endedAt: ending.at,
  }
}
