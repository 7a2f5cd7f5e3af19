import type { Observations } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type CaseFile, caseFileOf } from './caseFile'
import { type CaseStanding, caseStanding } from './caseStanding'
import { type CaseDangers, dangersOf } from './dangers'
import { endingFactsOf } from './endingFacts'
import { endingNeeds } from './endingNeeds'
import { judgedNow, judgedThen } from './judgedCase'
import type { JudgedReading } from './judgedReading'
import { observedIn } from './observed'

/** A case with what its records amount to. */
export type CaseView = {
  file: CaseFile
  judged: JudgedReading[]
  /** The same readings, held against the limits that were written down with them: by these an ending is judged. */
  judgedThatDay: JudgedReading[]
  /**
   * Without what something else on record contradicts. Worked out when it is asked for: a list of cases needs only how
   * they stand.
   */
  readonly observed: Observations
  dangers: CaseDangers
  standing: CaseStanding
  /** What the newest ending still lacks, as sentences; empty where there is none or nothing lacks. */
  missing: string[]
}

/**
 * A case as the screens show it; undefined when it is not on this device.
 * How it stands, and what its ending lacks, goes by the ratings of the day: a rating that changes later undoes no proof.
 * @param now ISO 8601: readings are held against the ratings of that moment. Left out: against those of their day
 */
export function caseViewOf(file: TeamFile, caseId: string, now?: string): CaseView | undefined {
  const ofCase = caseFileOf(file, caseId)
  if (ofCase === undefined) return undefined
  const judgedThatDay = judgedThen(file, ofCase)
  const judged = now === undefined ? judgedThatDay : judgedNow(file, ofCase, now)
  const dangers = dangersOf(file, ofCase, judged)
  const ending = ofCase.visits.at(-1)?.endings.at(-1)
  const missing =
    ending === undefined ? [] : endingNeeds(ending.body, endingFactsOf(file, ofCase, ending, judgedThatDay))
  let observed: Observations | undefined
  return {
    file: ofCase,
    judged,
    judgedThatDay,
    get observed() {
      observed ??= observedIn(
        ofCase.findings.filter(({ body }) => !dangers.contradicted.has(body.finding)),
        judged,
      )
      return observed
    },
    dangers,
    standing: caseStanding(ofCase, missing.length),
    missing,
  }
}
