import type { Saying } from '@/lib/records/envelope'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { settlement } from '@/lib/records/kinds/settlement'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { furnaceOf, setpointQuery } from '../setpoint/setpointAddress'
import { evidenceOnFile, standingOf } from './dispute'

/**
 * Where a dispute is settled with one of these reports: the first that names a number in dispute and carries what
 * settles one. Undefined where none does, or where whoever asks may not settle.
 */
export function settlingHref(
  file: TeamFile,
  reportIds: readonly string[],
  saying: Saying,
): string | undefined {
  if (!settlement.mayAdd.includes(saying.role)) return undefined
  const settings = ratingSettings(file, saying.saidAt)
  for (const id of reportIds) {
    const body = file.reports.get(id)?.body
    if (body === undefined) continue
    const address = {
      positionId: file.keptId(body.positionId),
      ...(body.furnaceId === undefined ? {} : { furnaceId: body.furnaceId }),
    }
    const setpoint = setpointOf(file, address.positionId, furnaceOf(file, address), settings)
    if (setpoint === undefined || standingOf(setpoint, body.action).level !== 'In dispute') continue
    if (evidenceOnFile(file, address.positionId, body.action, saying).some((report) => report.id === id))
      return `/settle?${setpointQuery(address)}&${new URLSearchParams({ action: body.action, evidence: id })}`
  }
  return undefined
}

/**
 * What a number that is not saved yet lacks to settle the dispute that it is in, as a sentence; that it lacks nothing
 * is said as well. Undefined for a source that settles none.
 */
export function settlingWords({ source, proof }: Pick<ReportBody, 'source' | 'proof'>): string | undefined {
  if (source === 'factory support')
    return proof?.kind === 'call reference'
      ? 'Factory technical support with a reference settles a dispute. Once this is saved, you are led on to settling it.'
      : 'Factory technical support settles a dispute, but only with a reference. Ask for it before you hang up.'
  if (source === 'current literature')
    return proof === undefined
      ? 'A page of the maker’s current literature settles a dispute. Say which document and page.'
      : 'The maker’s current page settles a dispute. Once this is saved, you are led on to settling it.'
  return undefined
}
