import type { JobOutcome } from '@/lib/core/callbacks/jobOutcomes'
import type { CaseFacts } from './caseFacts'

/** A completed job: its facts, and what became of it. */
export type Job = JobOutcome & { id: string; facts: CaseFacts }

export const cameBack = ({ became }: Job): boolean => became === 'came back'
