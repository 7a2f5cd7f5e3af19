import { sources } from '@/lib/catalogue/sources'
import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { sourceLine } from '../../setpoint/sourceLines'
import { actionWords } from '../../ui/words/actionWords'
import { toleranceWords } from '../../ui/words/pressureWords'
import { sayDate } from '../../ui/words/sayDate'

type Props = {
  body: ReadingBody
  file: TeamFile
  names: ReadonlyMap<string, string>
  unit: PressureUnit
}

type LimitThen = NonNullable<ReadingBody['against']>[number]

/** The limits that were written down with a reading, with level and sources of that day; those that share them in one line. */
export function LimitsThen({ body, file, names, unit }: Props) {
  const { against = [] } = body
  if (against.length === 0) return <p>No rating was on file for it that day.</p>
  return alike(against).map((limits) => {
    const { level, sources: kinds, reportIds } = limits[0]!
    const lines = reportIds.flatMap((id) => {
      const report = file.reports.get(id)
      return report === undefined ? [] : [sourceLine(report, names)]
    })
    return (
      <p key={limits[0]!.action}>
        That day it {limits.map((limit) => limitWords(limit, unit)).join(' and ')}, <b>{level}</b>:{' '}
        {lines.length === 0
          ? kinds.map((kind) => sources[kind].words).join('; ')
          : lines.map((line, place) => (
              <span key={line.key}>
                {place > 0 && '; '}
                <a href={line.href}>{line.words}</a>, {sayDate(line.date)}
              </span>
            ))}
        .
      </p>
    )
  })
}

const limitWords = (limit: LimitThen, unit: PressureUnit): string =>
  [
    actionWords[limit.action].verb,
    limit.action === 'not stated' ? '' : 'at',
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
