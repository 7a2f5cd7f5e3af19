import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { CaseFile } from './caseFile'
import { dangersOf } from './dangers'
import type { EndingFacts } from './endingNeeds'
import type { JudgedReading } from './judgedReading'
import { noticeOfEnding } from './leftOff'
import { positionsToProve } from './positionsToProve'

/**
 * What an ending is judged by: the case up to and including its visit, and the furnace as it was then. What is found
 * on a later visit, or years later in another case, takes nothing back from an ending that was finished; lifting a
 * notice and putting a switch right count whenever they come.
 */
export function endingFactsOf(
  team: TeamFile,
  file: CaseFile,
  ending: Entry<EndingBody>,
  judged: readonly JudgedReading[],
): EndingFacts {
  const place = file.visits.findIndex(({ entry }) => entry.id === ending.body.visitId)
  const visits = place < 0 ? file.visits : file.visits.slice(0, place + 1)
  const visitIds = new Set<string | undefined>(visits.map(({ entry }) => entry.id))
  const upToThen = <Body extends { visitId?: string }>(entries: Entry<Body>[]): Entry<Body>[] =>
    place < 0 ? entries : entries.filter(({ body }) => visitIds.has(body.visitId))
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
    unsuitable: file.unsuitable.filter(({ at }) => at <= ending.at),
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
    endedAt: ending.at,
  }
}
