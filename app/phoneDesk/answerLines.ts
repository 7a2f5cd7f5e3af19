import type { RatingSettings, RatingStanding } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import type { Question } from '@/lib/records/view/desk/questions'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingAt } from '@/lib/records/view/setpoint'
import { sayAnswer } from '../call/readOut'
import { lookAgainAt } from '../ui/words/lookAgain'

const keys = { closes: 'closes', opens: 'opens', 'not stated': 'unstated' } as const

/**
 * The level that a report's own number has for the furnace that was asked about: that of the rating where it is the
 * number shown; In dispute where it stands against it; else Unverified, for it is no more than a lead.
 */
export function levelOfReport(
  file: TeamFile,
  report: Entry<ReportBody>,
  furnaceId: string | undefined,
  settings: RatingSettings,
): Exclude<Level, 'Not on file'> {
  const standing = standingOfReport(file, report, furnaceId, settings)
  if (standing === undefined || standing.level === 'Not on file') return 'Unverified'
  if (standing.reportIds.includes(report.id)) return standing.level
  return standing.rivals.some((rival) => rival.disputes && rival.reportIds.includes(report.id))
    ? 'In dispute'
    : 'Unverified'
}

function standingOfReport(
  file: TeamFile,
  report: Entry<ReportBody>,
  furnaceId: string | undefined,
  settings: RatingSettings,
): RatingStanding | undefined {
  const position = file.positions.get(file.keptId(report.body.positionId))
  if (position === undefined) return undefined
  const furnace = furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(furnaceId))
  const rating = ratingAt(file, position, furnace === undefined ? {} : furnaceForRating(furnace), settings)
  return rating[keys[report.body.action]]
}

/** What makes a report's own number look like a slip: the slip itself, or that it stands the wrong way round. */
function lookAgainAtReport(report: Entry<ReportBody>, standing: RatingStanding | undefined): string[] {
  if (standing === undefined) return []
  if (standing.reportIds.includes(report.id)) return lookAgainAt(standing)
  const slip = standing.rivals.find(({ reportIds }) => reportIds.includes(report.id))?.slip
  return slip === undefined ? [] : [`it may be a slip, ${slip}. Ask again before it is worked by.`]
}

/** An answered question as lines to read out, one a number: the whole bundle, its level, and its source. */
export function answerLines(
  file: TeamFile,
  question: Question,
  settings: RatingSettings,
): { id: string; line: string; positionId: string }[] {
  const furnaceId = question.furnaces[0]?.id
  return question.answers.map((answer) => ({
    id: answer.id,
    positionId: answer.body.positionId,
    line: sayAnswer(
      answer,
      file,
      file.positions.get(file.keptId(answer.body.positionId))?.body.name ?? 'The switch',
      levelOfReport(file, answer, furnaceId, settings),
      lookAgainAtReport(answer, standingOfReport(file, answer, furnaceId, settings)),
    ),
  }))
}
