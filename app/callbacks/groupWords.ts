import { notNamed } from '@/lib/records/view/callbacks/job'
import { capitalised } from '../cases/work/capitalised'
import { causeName } from '../cases/work/causeName'

/** A main cause, or that nobody named one. */
export const causeWords = (key: string): string => (key === notNamed ? 'No cause named' : causeName(key))

/** What was done is said in its own words. */
export const remedyWords = capitalised
