import type { Observations } from '@/lib/core/diagnosis'
import type { CaseFile } from './caseFile'
import type { JudgedReading } from './judgedReading'

/** What of a case bears on a suspected switch. */
export type SuspectView = {
  file: CaseFile
  judged: readonly JudgedReading[]
  readonly observed: Observations
}
