import type { RatingSettings, RatingStanding } from '@/lib/core/rating'
import type { Action, LimitKind } from '@/lib/core/vocabulary'
import type { Saying } from '@/lib/records/envelope'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { settlement } from '@/lib/records/kinds/settlement'
import { lookupIn } from '@/lib/records/lookupIn'
import { reportsAt } from '@/lib/records/view/ratingReports'
import { type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { furnaceOf, type SetpointAddress } from '../setpoint/setpointAddress'
import { behind } from '../setpoint/sourceLines'

/** One side of a dispute: a value, what it rests on, and how it differs from the other side. */
export type Side = {
  pascals: number
  limit: LimitKind
  toleranceAbove?: number
  toleranceBelow?: number
  reportIds: string[]
  slip?: string
  /** Whether it stands against the value shown; else it is reported as well, likely a slip. */
  disputes: boolean
}

const standingKeys = { closes: 'closes', opens: 'opens', 'not stated': 'unstated' } as const

export const standingOf = (setpoint: Setpoint, action: Action): RatingStanding =>
  setpoint.rating[standingKeys[action]]

/** The value shown and each value reported beside it; one side alone where reports of one value contradict each other. */
export function sidesOf(standing: RatingStanding): Side[] {
  if (standing.level === 'Not on file') return []
  const { pascals, limit, toleranceAbove, toleranceBelow } = standing
  return [
    { pascals, limit, toleranceAbove, toleranceBelow, reportIds: behind(standing), disputes: true },
    ...standing.rivals.map((rival) => ({
      pascals: rival.pascals,
      limit: rival.limit,
      toleranceAbove: rival.toleranceAbove,
      toleranceBelow: rival.toleranceBelow,
      reportIds: rival.reportIds,
      slip: rival.slip,
      disputes: rival.disputes,
    })),
  ]
}

/** The reports of a position and action that the rule of settlements takes as evidence. */
export function evidenceOnFile(
  file: TeamFile,
  positionId: string,
  action: Action,
  saying: Saying,
): Entry<ReportBody>[] {
  const lookup = lookupIn(file)
  return reportsAt(file, positionId).filter(
    ({ id, body }) =>
      body.action === action &&
      settlement.refusedBy?.({ evidenceReportId: id, overruledReportIds: [] }, lookup, saying) === undefined,
  )
}

/** The reports that a piece of evidence stands against: those of another value or another limit kind. */
export const standAgainst = (
  evidence: ReportBody,
  reports: readonly Entry<ReportBody>[],
): Entry<ReportBody>[] =>
  reports.filter(({ body }) => body.pascals !== evidence.pascals || body.limit !== evidence.limit)

/** The standing as it would be once a settlement is on record: worked out as it will be then, and not foretold. */
export function standingAfter(
  file: TeamFile,
  address: SetpointAddress,
  settings: RatingSettings,
  settled: { action: Action; evidenceReportId: string; overruledReportIds: readonly string[] },
): RatingStanding | undefined {
  const { evidenceReportId, overruledReportIds } = settled
  const after = setpointOf(file, address.positionId, furnaceOf(file, address), {
    ...settings,
    settledDisputes: [...(settings.settledDisputes ?? []), { evidenceReportId, overruledReportIds }],
  })
  return after && standingOf(after, settled.action)
}
