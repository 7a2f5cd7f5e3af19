import { plainSpelling } from '@/lib/core/find'
import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { CallAttemptBody } from '../../kinds/callAttempt'
import type { OrganisationBody } from '../../kinds/organisation'
import type { ReportBody } from '../../kinds/report'
import { furnaceForRating } from '../furnaceForRating'
import { ratingAt } from '../setpoint'
import { byCall, organisationRung } from './answeredCalls'

/** Whom the team rings, and how well their answers held. */
export type Organisation = {
  /** The record of it: the newest, where two devices wrote down the same name. */
  entry: Entry<OrganisationBody>
  /** Every record of that name. */
  ids: string[]
  makerIds: string[]
  calls: Entry<CallAttemptBody>[]
  answers: Answer[]
}

/** One number of an answer, and whether it was proved right or wrong later by others. */
type Judged = { report: Entry<ReportBody>; later: 'right' | 'wrong' | 'not judged' }

/** What was answered in one call: right only if all of its numbers were, wrong as soon as one was. */
export type Answer = { parts: Judged[]; later: Judged['later'] }

/** Every organisation on file by name, records of one name taken together. */
export function organisationsIn(file: TeamFile, settings: RatingSettings): Organisation[] {
  const byName = new Map<string, Entry<OrganisationBody>[]>()
  for (const entry of counting(file.organisations)) {
    const name = plainSpelling(entry.body.name)
    byName.set(name, [...(byName.get(name) ?? []), entry])
  }
  const answers = answersByName(file)
  return [...byName]
    .map(([name, entries]): Organisation => {
      const ids = entries.map(({ id }) => id)
      return {
        entry: entries.at(-1)!,
        ids,
        makerIds: [...new Set(entries.flatMap(({ body }) => body.makerIds).map(file.keptId))],
        calls: counting(file.callAttempts).filter(({ body }) => ids.includes(body.organisationId)),
        answers: byCall(answers.get(name) ?? [], (report) => report).map((reports) =>
          answerOf(reports.map((report) => ({ report, later: laterOf(file, report, settings) }))),
        ),
      }
    })
    .toSorted((one, other) => one.entry.body.name.localeCompare(other.entry.body.name, 'en'))
}

function answerOf(parts: Judged[]): Answer {
  const isWrong = parts.some(({ later }) => later === 'wrong')
  const isRight = parts.every(({ later }) => later === 'right')
  return { parts, later: isWrong ? 'wrong' : isRight ? 'right' : 'not judged' }
}

/** The reports of calls, by the name of whoever gave them. */
function answersByName(file: TeamFile): Map<string, Entry<ReportBody>[]> {
  const of = new Map<string, Entry<ReportBody>[]>()
  for (const report of counting(file.reports)) {
    const rung = organisationRung(report.body)
    if (rung === undefined) continue
    const name = plainSpelling(rung)
    of.set(name, [...(of.get(name) ?? []), report])
  }
  return of
}

/**
 * Whether an answer was proved right or wrong by others: by a settled dispute that overruled it or named its value,
 * else by a rating that is Verified with it or against it. The report that settled a dispute proves itself as little
 * as a number nobody else has confirmed.
 */
function laterOf(file: TeamFile, report: Entry<ReportBody>, settings: RatingSettings): Judged['later'] {
  const { id, body } = report
  const settlements = counting(file.settlements)
  if (settlements.some((each) => each.body.overruledReportIds.includes(id))) return 'wrong'
  if (settlements.some((each) => each.body.evidenceReportId === id)) return 'not judged'
  const settled = settlements.find(
    (each) =>
      file.keptId(each.body.positionId) === file.keptId(body.positionId) && each.body.action === body.action,
  )
  if (settled?.body.pascals === body.pascals && settled.body.limit === body.limit) return 'right'
  const position = file.positions.get(file.keptId(body.positionId))
  if (position === undefined || body.action === 'not stated') return 'not judged'
  const furnace = body.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(body.furnaceId))
  const standing = ratingAt(file, position, furnace === undefined ? {} : furnaceForRating(furnace), settings)[
    body.action
  ]
  if (standing.level !== 'Verified') return 'not judged'
  if (standing.reportIds.includes(id)) return 'right'
  return standing.rivals.some(({ reportIds }) => reportIds.includes(id)) ? 'wrong' : 'not judged'
}
