import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { PromiseBody } from '../../kinds/promise'
import type { Question } from './questions'

/** A promise to ring that still holds. */
export type StandingPromise = {
  entry: Entry<PromiseBody>
  personId: string
  /** When it lapses by itself, ISO 8601. */
  until: string
}

/**
 * Who has promised to ring for a question, whoever promised first first. A promise holds until it lapses, is
 * withdrawn, or its author has rung since; each person has one, the newest.
 * @param now ISO 8601
 */
export function promisesOn(
  file: TeamFile,
  { lead, requests, calls }: Question,
  now: string,
): StandingPromise[] {
  const ids = new Set([lead, ...requests].map(({ id }) => id))
  const newest = new Map<string, Entry<PromiseBody>>()
  for (const entry of counting(file.promises)) {
    if (!ids.has(entry.body.requestId)) continue
    const before = newest.get(entry.by)
    if (before === undefined || before.at <= entry.at) newest.set(entry.by, entry)
  }
  return [...newest.values()]
    .map((entry) => ({ entry, personId: entry.by, until: plusMinutes(entry.at, entry.body.minutes) }))
    .filter(
      ({ entry, until }) => until > now && !calls.some(({ by, at }) => by === entry.by && at >= entry.at),
    )
    .toSorted((one, other) => (one.entry.at < other.entry.at ? -1 : 1))
}

const plusMinutes = (moment: string, minutes: number): string =>
  new Date(Date.parse(moment) + minutes * 60_000).toISOString()
