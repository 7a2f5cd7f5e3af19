import { sources } from '@/lib/catalogue/sources'
import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { ReportBody } from '@/lib/records/kinds/report'
import { sourceLine } from '../../setpoint/sourceLines'
import { actionWords } from '../../ui/words/actionWords'
import { toleranceWords } from '../../ui/words/pressureWords'
import { sayDate } from '../../ui/words/sayDate'

type Props = {
  body: ReadingBody
  /** When the reading was taken, ISO 8601. */
  at: string
  file: TeamFile
  names: ReadonlyMap<string, string>
  unit: PressureUnit
}

type LimitThen = NonNullable<ReadingBody['against']>[number]

/**
 * The limits that were written down with a reading, with level and sources of that day; those that share them in one
 * line, and each value that stood against one of them that day in a line of its own.
 */
export function LimitsThen({ body, at, file, names, unit }: Props) {
  const { against = [] } = body
  if (against.length === 0) return <p>No rating was on file for it that day.</p>
  const inDispute = against.filter((limit) => limit.rivals !== undefined && limit.rivals.length > 0)
  return (
    <>
      {alike(against).map((limits) => {
        const { level, sources: kinds, reportIds } = limits[0]!
        const reports = reportIds.flatMap((id) => file.reports.get(id) ?? [])
        return (
          <p key={limits[0]!.action}>
            That day {limits[0]!.action !== 'not stated' && 'it '}
            {limits.map((limit) => limitWords(limit, unit)).join(' and ')}, <b>{level}</b>:{' '}
            {reports.length === 0 ? (
              kinds.map((kind) => sources[kind].words).join('; ')
            ) : (
              <Sources {...{ reports, file, names }} />
            )}
            .
          </p>
        )
      })}
      {inDispute.flatMap(({ action, rivals = [] }) =>
        rivals.map((rival) => {
          const reports = reportsOf(file, body, at, { ...rival, action })
          return (
            <p key={`${action} ${rival.pascals} ${rival.limit}`}>
              Also possible that day: {action !== 'not stated' && 'it '}
              {limitWords({ ...rival, action }, unit)}, <b>In dispute</b>:{' '}
              {reports.length === 0 ? (
                'its report is not on this device'
              ) : (
                <Sources {...{ reports, file, names }} />
              )}
              .
            </p>
          )
        }),
      )}
    </>
  )
}

type SourcesProps = Pick<Props, 'file' | 'names'> & { reports: readonly Entry<ReportBody>[] }

function Sources({ reports, file, names }: SourcesProps) {
  return reports.map((report, place) => {
    const { key, href, words, date } = sourceLine(report, file, names)
    return (
      <span key={key}>
        {place > 0 && '; '}
        <a href={href}>{words}</a>, {sayDate(date)}
      </span>
    )
  })
}

/** The reports that named a value by that day, those that were withdrawn since among them. */
const reportsOf = (
  file: TeamFile,
  { positionId }: ReadingBody,
  at: string,
  { action, pascals, limit }: Pick<LimitThen, 'action' | 'pascals' | 'limit'>,
): Entry<ReportBody>[] =>
  [...file.reports.values()].filter(
    (report) =>
      positionId !== undefined &&
      file.keptId(report.body.positionId) === file.keptId(positionId) &&
      report.at <= at &&
      report.body.action === action &&
      report.body.limit === limit &&
      Math.abs(report.body.pascals - pascals) < 1e-9,
  )

const limitWords = (
  limit: Pick<LimitThen, 'action' | 'pascals' | 'limit' | 'toleranceAbove' | 'toleranceBelow'>,
  unit: PressureUnit,
): string =>
  [
    limit.action === 'not stated'
      ? 'its action was not stated, its value'
      : `${actionWords[limit.action].verb} at`,
    formatPressure(limit.pascals, unit),
    toleranceWords(limit, unit),
  ]
    .filter(Boolean)
    .join(' ')

/** Limits of the same level that rest on the same reports, together. */
function alike(limits: readonly LimitThen[]): LimitThen[][] {
  const groups = new Map<string, LimitThen[]>()
  for (const limit of limits) {
    const key = [limit.level, ...limit.sources, ...limit.reportIds].join(' ')
    groups.set(key, [...(groups.get(key) ?? []), limit])
  }
  return [...groups.values()]
}
