import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { AsksTooBody } from '../../kinds/asksToo'
import type { CallAttemptBody } from '../../kinds/callAttempt'
import type { EquipmentRangeBody } from '../../kinds/equipmentRange'
import type { FurnaceBody } from '../../kinds/furnace'
import type { MakerBody } from '../../kinds/maker'
import type { PositionBody } from '../../kinds/position'
import type { RatingRequestBody } from '../../kinds/ratingRequest'
import type { ReportBody } from '../../kinds/report'
import { asksTheSame, type Subject } from './sameQuestion'

/** Somebody who waits for an answer. */
export type Asker = {
  personId: string
  /** When they asked first, ISO 8601. */
  at: string
  /** Said on this device only, and not sent yet. */
  waiting: boolean
}

/** One rating that is asked for, by whoever asks: all requests that ask the same, and what was done about them. */
export type Question = {
  /** The first request: what a promise, a call and an answer name. */
  lead: Entry<RatingRequestBody>
  /** Every request of it that stands, oldest first. */
  requests: Entry<RatingRequestBody>[]
  alsoAsked: Entry<AsksTooBody>[]
  /** The first asker first. Each person once. */
  askers: Asker[]
  /** The reports that answer it, oldest first. */
  answers: Entry<ReportBody>[]
  /** The calls that were made for it, oldest first. */
  calls: Entry<CallAttemptBody>[]
  position: Entry<PositionBody> | undefined
  range: Entry<EquipmentRangeBody> | undefined
  maker: Entry<MakerBody> | undefined
  /** The furnaces that people asked at. */
  furnaces: Entry<FurnaceBody>[]
}

const known = new WeakMap<TeamFile, readonly Question[]>()

/**
 * Every rating that was asked for, oldest first. Requests that ask the same are one question, also when they were
 * made apart without a signal; what is asked after it was answered is a question of its own. A question lives as
 * long as one of its askers does. A file never changes, so it is worked out once.
 */
export function questionsIn(file: TeamFile): readonly Question[] {
  const before = known.get(file)
  if (before !== undefined) return before
  const questions = gather(file)
  known.set(file, questions)
  return questions
}

/** The questions that no report answers yet. */
export const openQuestions = (file: TeamFile): Question[] =>
  questionsIn(file).filter(({ answers }) => answers.length === 0)

/** The question that a request belongs to. */
export const questionOf = (file: TeamFile, requestId: string): Question | undefined =>
  questionsIn(file).find(
    ({ lead, requests }) => lead.id === requestId || requests.some(({ id }) => id === requestId),
  )

/** The open question that asks the same, whom a new asker joins. */
export const openTwin = (file: TeamFile, subject: Subject): Question | undefined =>
  openQuestions(file).find(({ lead, requests }) =>
    [lead, ...requests].some(({ body }) => asksTheSame(file, body, subject)),
  )

const oldestFirst = (one: { at: string; id: string }, other: { at: string; id: string }): number =>
  one.at < other.at ? -1 : one.at > other.at ? 1 : one.id < other.id ? -1 : 1

function gather(file: TeamFile): Question[] {
  const alsoAsked = byRequest(counting(file.asksToo), ({ body }) => [body.requestId])
  const answers = byRequest(counting(file.reports), ({ body }) =>
    body.requestId === undefined ? [] : [body.requestId],
  )
  const calls = byRequest(counting(file.callAttempts), ({ body }) => body.requestIds)
  const asked = [...file.requests.values()]
    .filter(({ id, withdrawn }) => withdrawn === undefined || alsoAsked.has(id))
    .toSorted(oldestFirst)
  const groups: Entry<RatingRequestBody>[][] = []
  for (const request of asked) {
    const twin = groups.find(
      (group) =>
        group.some(({ body }) => asksTheSame(file, body, request.body)) &&
        !group.some(({ id }) => (answers.get(id) ?? []).some(({ at }) => at <= request.at)),
    )
    if (twin === undefined) groups.push([request])
    else twin.push(request)
  }
  const ofGroup = <Body>(from: ReadonlyMap<string, Entry<Body>[]>, group: Entry<RatingRequestBody>[]) =>
    [...new Set(group.flatMap(({ id }) => from.get(id) ?? []))].toSorted(oldestFirst)
  return groups.map((group) =>
    questionFrom(file, group, {
      alsoAsked: ofGroup(alsoAsked, group),
      answers: ofGroup(answers, group),
      calls: ofGroup(calls, group),
    }),
  )
}

function questionFrom(
  file: TeamFile,
  group: Entry<RatingRequestBody>[],
  said: Pick<Question, 'alsoAsked' | 'answers' | 'calls'>,
): Question {
  const lead = group[0]!
  const requests = group.filter(({ withdrawn }) => withdrawn === undefined)
  const asking = [...requests, ...said.alsoAsked].toSorted(oldestFirst)
  const position = find(file, file.positions, lead.body.positionId)
  const furnaces = [...new Set(asking.flatMap(({ body }) => find(file, file.furnaces, body.furnaceId) ?? []))]
  const range = find(file, file.ranges, position?.body.rangeId ?? furnaces[0]?.body.rangeId)
  return {
    lead,
    requests,
    ...said,
    askers: [
      ...new Map(
        asking.toReversed().map(({ by, at, waiting }) => [by, { personId: by, at, waiting }]),
      ).values(),
    ].toSorted((one, other) => (one.at < other.at ? -1 : 1)),
    position,
    range,
    maker: find(file, file.makers, range?.body.makerId),
    furnaces,
  }
}

const find = <Body>(
  file: TeamFile,
  entries: ReadonlyMap<string, Entry<Body>>,
  id: string | undefined,
): Entry<Body> | undefined => (id === undefined ? undefined : entries.get(file.keptId(id)))

function byRequest<Body>(
  entries: readonly Entry<Body>[],
  requestsOf: (entry: Entry<Body>) => readonly string[],
): Map<string, Entry<Body>[]> {
  const of = new Map<string, Entry<Body>[]>()
  for (const entry of entries) {
    for (const id of requestsOf(entry)) of.set(id, [...(of.get(id) ?? []), entry])
  }
  return of
}
