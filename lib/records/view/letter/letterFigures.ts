import { windowEnd } from '@/lib/core/callbacks/callbackWindow'
import { monthBegins, monthName, readMonth } from '@/lib/core/callbacks/month'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { type EndingWay, endingWays } from '@/lib/records/kinds/ending'
import { callbackFigures } from '../callbacks/callbackFigures'
import { casesOfTeam } from '../callbacks/caseFacts'
import { type CaseShare, caseShare } from '../callbacks/caseShare'
import { type CallbackQuestion, callbackWindowOf, usualQuestion } from '../callbacks/question'
import { type LeftUndone, leftUndone } from '../leftUndone/leftUndone'
import { completeness } from '../reports/completeness'
import { isIn, type Period } from '../reports/period'
import { type SafetyEvent, safetyEvents } from '../reports/safetyEvents'
import { unjustifiedSwapsIn } from '../swaps/unjustifiedSwaps'

/** The figures of one month. */
export type MonthInLetter = {
  /** '2026-01' */
  month: string
  /** 'open' while a job of it can still come back: its callbacks will grow. */
  standing: 'settled' | 'open'
  /** Milliseconds since 1970, UTC. */
  settlesAt: number
  /** Jobs done in the month that came back, and those of them that were proven; from the callbacks screen's function. */
  cameBack: CaseShare
  fixesThatCameBack: CaseShare
  opened: number
  endedAs: Readonly<Record<EndingWay, number>>
  /** Repairs with readings before and after, and with CO in room and flue. */
  readings: CaseShare
  coTests: CaseShare
  /** Replacements of a switch; and those of them for which something was missing, by the ids of the repairs. */
  swaps: number
  swapsMissing: CaseShare
  events: Readonly<Record<SafetyEvent['what'], number>>
  /** Reports of ratings recorded, and questions from the field that got their first answer. */
  reports: number
  answered: number
}

export type LetterFigures = {
  /** What counts as a callback, and of which furnaces. */
  question: CallbackQuestion
  month: MonthInLetter
  before: MonthInLetter
  /** As it stands now, whatever the month. */
  undone: LeftUndone
}

/**
 * The figures of the monthly letter: those of a month and of the one before, as known now. Callbacks are those of
 * the callbacks screen, from the same function.
 * @param month '2026-01'
 * @param now ISO 8601
 * @throws RangeError when it is no month
 */
export function letterFigures(file: TeamFile, month: string, now: string): LetterFigures {
  const before = monthName(readMonth(month) - 1)
  const question: CallbackQuestion = { ...usualQuestion(now), fromMonth: before, toMonth: month }
  const callbacks = callbackFigures(file, question, now)
  const swaps = unjustifiedSwapsIn(file, callbackWindowOf(question), now).all
  const figuresOfMonth = (name: string): MonthInLetter => {
    const period = periodOf(name, now)
    const settlesAt = windowEnd(monthBegins(readMonth(name) + 1), callbackWindowOf(question))
    const jobs = callbacks.months.find((one) => one.month === name)
    const measured = completeness(file, period).find((one) => one.month === name)
    const replaced = swaps.filter(({ repair }) => isIn(period, Date.parse(repair.at)))
    return {
      month: name,
      standing: settlesAt <= Date.parse(now) ? 'settled' : 'open',
      settlesAt,
      cameBack: jobs?.cameBack ?? none,
      fixesThatCameBack: jobs?.fixesThatCameBack ?? none,
      ...casesOf(file, period),
      readings: measured?.readings ?? none,
      coTests: measured?.coTests ?? none,
      swaps: replaced.length,
      swapsMissing: caseShare(
        replaced.map(({ repair: { id }, missing }) => ({ id, missing })),
        ({ missing }) => missing.length > 0,
      ),
      events: eventsOf(file, period),
      ...ratingsOf(file, period),
    }
  }
  return {
    question,
    month: figuresOfMonth(month),
    before: figuresOfMonth(before),
    undone: leftUndone(file, now),
  }
}

const none = caseShare<{ id: string }>([], () => false)

/** A month, as far as it has gone by. */
const periodOf = (month: string, now: string): Period => ({
  from: monthBegins(readMonth(month)),
  before: Math.min(monthBegins(readMonth(month) + 1), Date.parse(now) + 1),
})

function casesOf(file: TeamFile, period: Period): Pick<MonthInLetter, 'opened' | 'endedAs'> {
  const cases = casesOfTeam(file)
  const ended = cases.filter((one) => one.ended !== undefined && isIn(period, one.ended.at))
  return {
    opened: cases.filter(({ openedAt }) => isIn(period, openedAt)).length,
    endedAs: Object.fromEntries(
      endingWays.map((way) => [way, ended.filter((one) => one.ended?.how === way).length]),
    ) as Record<EndingWay, number>,
  }
}

function eventsOf(file: TeamFile, period: Period): MonthInLetter['events'] {
  const counts = {
    'left off and tagged': 0,
    'left off, no tag on record': 0,
    'CO in the room': 0,
    'CO in the flue': 0,
    'jumper or bypass': 0,
  }
  for (const { what } of safetyEvents(file, period)) counts[what]++
  return counts
}

function ratingsOf(file: TeamFile, period: Period): Pick<MonthInLetter, 'reports' | 'answered'> {
  const reports = counting(file.reports)
  const firstAnswer = new Map<string, string>()
  for (const { at, body } of reports) {
    if (body.requestId === undefined) continue
    const known = firstAnswer.get(body.requestId)
    if (known === undefined || at < known) firstAnswer.set(body.requestId, at)
  }
  return {
    reports: reports.filter(({ at }) => isIn(period, Date.parse(at))).length,
    answered: [...firstAnswer.values()].filter((at) => isIn(period, Date.parse(at))).length,
  }
}
