import { plainSpelling } from '@/lib/core/find'
import {
  learnReliability,
  type ReliabilityCounts,
  type ReliabilityKey,
  reliabilityKeyOf,
  startCounts,
} from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { ReportBody } from '../kinds/report'
import type { SettlementBody } from '../kinds/settlement'
import { organisationRung } from './desk/answeredCalls'
import { ratingReportOf } from './ratingReports'
import { settledDisputes } from './settledDisputes'

/** What one settled dispute taught of one report: that it had named the settled value, or that it was overruled. */
export type Lesson = { settlement: Entry<SettlementBody>; report: Entry<ReportBody>; held: boolean }

/** How far a kind of source is believed: at first, now, and the lessons in between. Beta counts, right and wrong. */
export type SourceTrust = {
  key: ReliabilityKey
  start: ReliabilityCounts
  now: ReliabilityCounts
  lessons: Lesson[]
}

/**
 * Every lesson of the settled disputes, oldest first. The report that settled one is itself no test of its source.
 * @example lessonsOf(file).filter(({ held }) => !held) // what was overruled
 */
export const lessonsOf = (file: TeamFile): Lesson[] =>
  settledDisputes(file).flatMap(({ settlement, evidenceReportId, overruledReportIds, upheldReportIds }) => {
    const lesson = (held: boolean) => (id: string) => {
      const report = file.reports.get(id)
      return report === undefined || id === evidenceReportId ? [] : [{ settlement, report, held }]
    }
    return [...overruledReportIds.flatMap(lesson(false)), ...upheldReportIds.flatMap(lesson(true))]
  })

/** Every kind of source with what settled disputes made of its start value: the counts that the weighing takes. */
export function sourceTrust(file: TeamFile): SourceTrust[] {
  const reports = new Map(counting(file.reports).map((report) => [report.id, ratingReportOf(report, file)]))
  const now = learnReliability(settledDisputes(file), reports)
  const lessons = grouped(lessonsOf(file), ({ report }) => reliabilityKeyOf(ratingReportOf(report, file)))
  return (Object.keys(startCounts) as ReliabilityKey[]).map((key) => ({
    key,
    start: startCounts[key],
    now: now[key],
    lessons: lessons.get(key) ?? [],
  }))
}

/** Whom the team rings, with what settled disputes taught of their answers; those without a lesson are left out. */
export function organisationTrust(file: TeamFile): { name: string; lessons: Lesson[] }[] {
  const named = lessonsOf(file).flatMap((lesson) => {
    const name = organisationRung(lesson.report.body)
    return name === undefined ? [] : [{ name, lesson }]
  })
  return [...grouped(named, ({ name }) => plainSpelling(name)).values()]
    .map((told) => ({ name: told.at(-1)!.name, lessons: told.map(({ lesson }) => lesson) }))
    .toSorted((one, other) => one.name.localeCompare(other.name, 'en'))
}

function grouped<Key, Value>(values: readonly Value[], keyOf: (value: Value) => Key): Map<Key, Value[]> {
  const groups = new Map<Key, Value[]>()
  for (const value of values) groups.set(keyOf(value), [...(groups.get(keyOf(value)) ?? []), value])
  return groups
}
