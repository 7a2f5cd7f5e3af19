import { failure, type Result, success } from '@/lib/core/result'
import type { Entry } from '../fold/entry'
import type { PositionBody } from '../kinds/position'
import { type ReportBody, report } from '../kinds/report'
import type { ReadRow } from './readRow'

/** An origin only tells reports apart; the proof has it whole. */
const longestOrigin = 120

/**
 * The bodies of the reports that a row becomes, one for each of its numbers, as the schema takes them.
 *
 * @returns a problem that says what the schema doesn't take
 */
export function reportsOf(
  { values, backing, coverage, partNumber, note }: ReadRow,
  position: Entry<PositionBody>,
  fileName: string,
): Result<ReportBody[]> {
  const { remark: _remark, proof, ...said } = backing
  const bodies: ReportBody[] = []
  for (const { warnings: _warnings, ...value } of values) {
    const body = {
      positionId: position.id,
      ...value,
      kind: position.body.kind,
      between: 'not stated',
      tap: 'not stated',
      stage: 'not stated',
      ...said,
      ...(proof === undefined ? {} : { proof }),
      // One list is one origin: its rows don't bear each other out.
      origin: originOf(proof, fileName),
      ...coverage,
      ...(partNumber === undefined ? {} : { partNumber }),
      ...(note === undefined ? {} : { note }),
    }
    const parsed = report.versions[report.version]!.safeParse(body)
    if (!parsed.success) {
      const [issue] = parsed.error.issues
      return failure('report', issue?.message ?? 'The row does not fit a report.')
    }
    bodies.push(parsed.data as ReportBody)
  }
  return success(bodies)
}

function originOf(proof: ReportBody['proof'], fileName: string): string {
  const whole =
    proof?.kind === 'document'
      ? `${proof.name} page ${proof.page} ${proof.edition ?? ''}`
      : proof?.kind === 'call reference'
        ? `call ${proof.organisation} ${proof.reference}`
        : `list ${fileName}`
  return whole.trim().slice(0, longestOrigin)
}
