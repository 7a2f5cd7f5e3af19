import { causeById } from '@/lib/catalogue/causes'
import { countsIn } from '@/lib/core/callbacks/callbackWindow'
import { outcomesOfFurnace } from '@/lib/core/callbacks/jobOutcomes'
import { monthBegins, readMonth } from '@/lib/core/callbacks/month'
import { jobsByMonth } from '@/lib/core/callbacks/monthlyRates'
import type { Repeat } from '@/lib/core/callbacks/repeatsOf'
import { episodeOfFurnace } from '@/lib/core/callbacks/timeToCallback'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type CaseFacts, type TeamFacts, teamFacts } from './caseFacts'
import { type CaseShare, caseShare } from './caseShare'
import { type CostFigures, costFigures, type EndedCase } from './costFigures'
import { type CurveFigure, curveFigure, type WatchedFix } from './curveFigure'
import { cameBack, type Job, notNamed } from './job'
import { type MonthFigure, monthFigures } from './monthFigures'
import { type PersonFigure, peopleFigures } from './peopleFigures'
import { type CallbackQuestion, callbackWindowOf, isAskedAbout, timeWindowOf } from './question'
import { type RankedGroup, rankedGroups } from './rankedGroups'
import { type ReadingFigures, readingFigures } from './readingFigures'

/**
 * Every figure of the callbacks screen and of the monthly letter, each with the ids of the cases behind it. Rates are
 * of settled months alone, so the causes, the remedies and the people add up to the same jobs and the same callbacks.
 */
export type CallbackFigures = {
  question: CallbackQuestion
  /** The jobs of settled months, and how many of them came back. */
  settled: CaseShare
  /** The jobs of months that are still open, and how many of them came back so far. */
  open: CaseShare
  months: readonly MonthFigure[]
  causes: readonly RankedGroup[]
  remedies: readonly RankedGroup[]
  /** Causes have many names: their groups make larger curves. */
  curves: Record<'byCause' | 'byCauseGroup' | 'byRemedy' | 'bySwitch', CurveFigure>
  costs: CostFigures
  readings: ReadingFigures
  people: readonly PersonFigure[]
  /** What each job was called back for, when it had ended and when it was back, by the id of the job. */
  callbacks: ReadonlyMap<string, Pick<Repeat, 'laterId' | 'jobEndedAt' | 'backAt'>>
  /** Cases of the period that are in no figure, or not as they were said. */
  apart: {
    /** Two endings of the last visit stand side by side. */
    endingsDisagree: readonly string[]
    /** Said to be proven, but the proof lacks something: counted as not proven. */
    proofLacksSomething: readonly string[]
    /** Opened in the period, and nobody has ended them yet. */
    notEnded: readonly string[]
  }
}

/** The group of the catalogue that a main cause is in; one that it does not list is in none of them. */
const causeGroupOf = ({ cause }: WatchedFix): string => causeById(cause)?.group ?? 'something else'

/** The two sides of the curve by switch. */
export const switchReplaced = 'switch replaced'
export const switchKept = 'switch not replaced'

/**
 * The figures of a team file. The same function makes those of the screen and those of the letter.
 * @param now ISO 8601; what happened later is left out
 * @throws RangeError when a month of the question is none, or its days are not above 0
 */
export const callbackFigures = (file: TeamFile, question: CallbackQuestion, now: string): CallbackFigures =>
  figuresOf(teamFacts(file), question, Date.parse(now))

/** The same from facts that are worked out already. @param now milliseconds since 1970, UTC */
export function figuresOf(facts: TeamFacts, question: CallbackQuestion, now: number): CallbackFigures {
  const { jobs, fixes, ended, callbacks, apart } = gathered(facts, question, now)
  const months = jobsByMonth(jobs, callbackWindowOf(question), now).filter(
    ({ month }) => month >= question.fromMonth && month <= question.toMonth,
  )
  const jobsOf = (standing: 'settled' | 'open') =>
    months.filter((month) => month.standing === standing).flatMap((month) => month.jobs)
  const settled = jobsOf('settled')
  return {
    question,
    settled: caseShare(settled, cameBack),
    open: caseShare(jobsOf('open'), cameBack),
    months: monthFigures(months),
    causes: rankedGroups(settled, ({ cause }) => cause),
    remedies: rankedGroups(settled, ({ remedy }) => remedy),
    curves: {
      byCause: curveFigure(fixes, ({ cause }) => cause, true),
      byCauseGroup: curveFigure(fixes, causeGroupOf, true),
      byRemedy: curveFigure(fixes, ({ remedy }) => remedy, false),
      bySwitch: curveFigure(
        fixes,
        ({ remedy }) => (remedy === 'switch replaced' ? switchReplaced : switchKept),
        false,
      ),
    },
    costs: costFigures(ended),
    readings: readingFigures(ended, question),
    people: peopleFigures(settled),
    callbacks,
    apart,
  }
}

/** Everything that is counted, in one pass over the furnaces that are asked about: each further one would cost as much. */
function gathered(facts: TeamFacts, question: CallbackQuestion, now: number) {
  const from = monthBegins(readMonth(question.fromMonth))
  const before = monthBegins(readMonth(question.toMonth) + 1)
  const inPeriod = (moment: number): boolean => moment >= from && moment < before && moment <= now
  const [window, timeWindow] = [callbackWindowOf(question), timeWindowOf(question)]
  const jobs: Job[] = []
  const fixes: WatchedFix[] = []
  const ended: EndedCase[] = []
  const callbacks = new Map<string, Repeat>()
  const apart = {
    endingsDisagree: [] as string[],
    proofLacksSomething: [] as string[],
    notEnded: [] as string[],
  }
  for (const { cases, watchEnds } of facts) {
    if (cases[0] === undefined || !isAskedAbout(cases[0], question)) continue
    const factsById = (id: string): CaseFacts => cases.find((one) => one.id === id)!
    const calledFor: string[] = []
    for (const { caseId: id, endedAt, isFix, repeat } of outcomesOfFurnace(cases, window, now)) {
      const { cause = notNamed, remedy, ended: ending } = factsById(id)
      jobs.push({ id, endedAt, isFix, cameBack: repeat !== undefined, cause, remedy, by: ending!.by })
      if (repeat === undefined) continue
      callbacks.set(id, repeat)
      calledFor.push(repeat.laterId)
    }
    const episode = episodeOfFurnace(cases, timeWindow, now, watchEnds, { from, before })
    if (episode !== undefined) {
      const { id, cause = notNamed, remedy } = factsById(episode.caseId)
      fixes.push({ id, cause, remedy, days: Math.floor(episode.days), endedBy: episode.endedBy })
    }
    for (const one of cases) {
      const { id, openedAt, ended: ending, trouble } = one
      if (openedAt > now || !countsIn(one, window)) continue
      if (inPeriod(openedAt)) {
        if (trouble === 'endings disagree') apart.endingsDisagree.push(id)
        if (trouble === undefined && (ending === undefined || ending.at > now)) apart.notEnded.push(id)
      }
      if (ending !== undefined && inPeriod(ending.at)) {
        if (trouble === 'proof lacks something') apart.proofLacksSomething.push(id)
        ended.push({ facts: one, isCallback: calledFor.includes(id) })
      }
    }
  }
  // Shortest first, so that each of the curves finds them sorted already.
  fixes.sort((a, b) => a.days - b.days)
  return { jobs, fixes, ended, callbacks, apart }
}
