import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { GaugeBody } from '@/lib/records/kinds/gauge'
import type { SameAsBody } from '@/lib/records/kinds/sameAs'

/** When each duplicate was joined to the record that is kept, ISO 8601. */
type JoinedAt = ReadonlyMap<string, string>

const indexes = new WeakMap<TeamFile['records'], JoinedAt>()

/**
 * The gauge as it stood on record at a moment. A gauge that is calibrated anew is added again and joined with its old
 * record; what was measured before keeps the old date and the old accuracy, or a lapsed calibration would look
 * current afterwards. Joined or withdrawn by that moment, the record that is kept speaks for it.
 * @param moment ISO 8601, UTC
 * @returns undefined when nothing of it is on this device
 */
export function gaugeThen(
  file: TeamFile,
  gaugeId: string | undefined,
  moment: string,
): Entry<GaugeBody> | undefined {
  if (gaugeId === undefined) return undefined
  const named = file.gauges.get(gaugeId)
  const joinedAt = joinsIn(file.records).get(gaugeId)
  const isGone = (at: string | undefined) => at !== undefined && at <= moment
  return named === undefined || isGone(joinedAt) || isGone(named.withdrawn?.at)
    ? (file.gauges.get(file.keptId(gaugeId)) ?? named)
    : named
}

function joinsIn(records: TeamFile['records']): JoinedAt {
  const known = indexes.get(records)
  if (known !== undefined) return known
  const joins = new Map<string, string>()
  for (const { kind, entry } of records.values()) {
    if (kind !== 'same as' || entry.withdrawn !== undefined) continue
    joins.set((entry.body as SameAsBody).duplicate, entry.at)
  }
  indexes.set(records, joins)
  return joins
}
