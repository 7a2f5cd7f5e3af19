import { verdictWords } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { causeOf } from '@/lib/records/view/case/pastCases'
import { causeName } from '../work/causeName'
import { dayWords } from './momentWords'

type Props = { file: TeamFile; ofCase: CaseFile; now: string }

/** Says that a case repeats an earlier one of the same furnace: what was fixed then, and what the readings were. */
export function LastTime({ file, ofCase, now }: Props) {
  const last = ofCase.earlier[0]
  const then = last && caseViewOf(file, last.id)
  if (last === undefined || then === undefined) return null
  const cause = causeOf(file, then, now)
  const repairs = then.file.repairs.map(({ body }) => body.done)
  const readings = then.judged.map(({ entry: { body }, comparison }) =>
    [
      `${body.asTyped}, ${body.stage}, ${body.phase}, ${body.when}`,
      verdictWords(comparison).join(', ').toLowerCase(),
    ]
      .filter(Boolean)
      .join(': '),
  )
  return (
    <aside aria-label="Repeats an earlier case">
      <p>
        <b>
          It repeats <a href={`/case/history?id=${last.id}`}>the case of {dayWords(last.at)}</a>
        </b>{' '}
        on the same furnace{ofCase.earlier.length > 1 && `, the newest of ${ofCase.earlier.length} before it`}
        .{' '}
        {cause === undefined
          ? 'No cause was named then.'
          : `Cause then, ${cause.status}: ${causeName(cause.main)}.`}{' '}
        {repairs.length === 0 ? 'Nothing was repaired then.' : `Done then: ${repairs.join('; ')}.`}{' '}
        {readings.length === 0 ? 'No reading was taken then.' : `Readings then: ${readings.join('; ')}.`}
      </p>
    </aside>
  )
}
