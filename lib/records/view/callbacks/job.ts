import type { JobOutcome } from '@/lib/core/callbacks/jobOutcomes'
import type { CaseFacts } from './caseFacts'

/** A completed job: its facts, and what became of it. */
export type Job = { id: string; endedAt: number; facts: CaseFacts; outcome: JobOutcome }

export const cameBack = ({ outcome }: Job): boolean => outcome.became === 'came back'
