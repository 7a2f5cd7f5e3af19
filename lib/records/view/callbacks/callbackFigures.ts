import { causeById } from '@/lib/catalogue/causes'
import { countsIn } from '@/lib/core/callbacks/callbackWindow'
import { outcomesOfFurnace } from '@/lib/core/callbacks/jobOutcomes'
import { monthBegins, readMonth } from '@/lib/core/callbacks/month'
import { jobsByMonth } from '@/lib/core/callbacks/monthlyRates'
import { episodeOfFurnace } from '@/lib/core/callbacks/timeToCallback'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type CaseFacts, type TeamFacts, teamFacts } from './caseFacts'
import { type CaseShare, caseShare } from './caseShare'
import { type CostFigures, costFigures, notNamed } from './costFigures'
import { type CurveFigure, curveFigure, type WatchedFix } from './curveFigure'
import { cameBack, type Job } from './job'
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
  /** What each job was called back for, and after how many days of the calendar, by the id of the job. */
  callbacks: ReadonlyMap<string, { laterId: string; days: number }>
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
const causeGroupOf = ({ cause }: CaseFacts): string =>
  (cause === undefined ? undefined : causeById(cause)?.group) ?? 'something else'

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
  const from = monthBegins(readMonth(question.fromMonth))
  const before = monthBegins(readMonth(question.toMonth) + 1)
  const inPeriod = (moment: number): boolean => moment >= from && moment < before && moment <= now
  const window = callbackWindowOf(question)
  const { cases, jobs, fixes, calledFor } = gathered(facts, question, now, { from, before })

  const months = jobsByMonth(jobs, window, now).filter(
    ({ month }) => month >= question.fromMonth && month <= question.toMonth,
  )
  const jobsOf = (standing: 'settled' | 'open') =>
    months.filter((month) => month.standing === standing).flatMap((month) => month.jobs)
  const settled = jobsOf('settled')

  const ended = cases.filter((one) => one.ended !== undefined && inPeriod(one.ended.at))
  const idsOf = (which: readonly CaseFacts[]) => which.map(({ id }) => id)
  return {
    question,
    settled: caseShare(settled, cameBack),
    open: caseShare(jobsOf('open'), cameBack),
    months: monthFigures(months),
    causes: rankedGroups(settled, (job) => job.facts.cause ?? notNamed),
    remedies: rankedGroups(settled, (job) => job.facts.remedy),
    curves: {
      byCause: curveFigure(fixes, (fix) => fix.facts.cause ?? notNamed, true),
      byCauseGroup: curveFigure(fixes, (fix) => causeGroupOf(fix.facts), true),
      byRemedy: curveFigure(fixes, (fix) => fix.facts.remedy, false),
      bySwitch: curveFigure(
        fixes,
        (fix) => (fix.facts.remedy === 'switch replaced' ? switchReplaced : switchKept),
        false,
      ),
    },
    costs: costFigures(ended, ({ id }) => calledFor.has(id)),
    readings: readingFigures(ended, question),
    people: peopleFigures(settled),
    callbacks: new Map(
      jobs.flatMap(({ id, outcome: { repeat } }) => (repeat === undefined ? [] : [[id, repeat] as const])),
    ),
    apart: {
      endingsDisagree: idsOf(
        cases.filter(({ openedAt, trouble }) => trouble === 'endings disagree' && inPeriod(openedAt)),
      ),
      proofLacksSomething: idsOf(ended.filter(({ trouble }) => trouble === 'proof lacks something')),
      notEnded: idsOf(
        cases.filter(
          ({ openedAt, ended, trouble }) =>
            (ended === undefined || ended.at > now) && trouble === undefined && inPeriod(openedAt),
        ),
      ),
    },
  }
}

/**
 * Everything that is counted, in one pass over the furnaces that are asked about.
 * @param started the time in which an episode has to begin
 */
function gathered(
  facts: TeamFacts,
  question: CallbackQuestion,
  now: number,
  started: { from: number; before: number },
) {
  const [window, timeWindow] = [callbackWindowOf(question), timeWindowOf(question)]
  const cases: CaseFacts[] = []
  const jobs: Job[] = []
  const fixes: WatchedFix[] = []
  const calledFor = new Set<string>()
  for (const { cases: ofFurnace, watchEnds } of facts) {
    if (ofFurnace[0] === undefined || !isAskedAbout(ofFurnace[0], question)) continue
    for (const one of ofFurnace) if (one.openedAt <= now && countsIn(one, window)) cases.push(one)
    const factsById = (id: string): CaseFacts => ofFurnace.find((one) => one.id === id)!
    for (const outcome of outcomesOfFurnace(ofFurnace, window, now)) {
      const { caseId: id, endedAt } = outcome
      jobs.push({ id, endedAt, facts: factsById(id), outcome })
      if (outcome.repeat !== undefined) calledFor.add(outcome.repeat.laterId)
    }
    const episode = episodeOfFurnace(ofFurnace, timeWindow, now, watchEnds, started)
    if (episode !== undefined)
      fixes.push({
        id: episode.caseId,
        facts: factsById(episode.caseId),
        episode: { ...episode, days: Math.floor(episode.days) },
      })
  }
  return { cases, jobs, fixes, calledFor }
}
