import {
  type CaseState,
  type Complaint,
  lookNames,
  type Requirement,
  switchReplacement,
} from '@/lib/core/guard'

/** What is missing where a switch was replaced outside any case, or nobody said which: all of it. */
export function nothingOnRecord(kind: CaseState['kind'] = 'one-port'): {
  complaint: Complaint
  missing: Requirement[]
} {
  const looks = Object.fromEntries(lookNames.map((look) => [look, 'not checked'])) as CaseState['looks']
  const complaint = 'will not close'
  const { missing } = switchReplacement({ complaint, kind, looks, part: { supersessions: [] } })
  return { complaint, missing }
}
