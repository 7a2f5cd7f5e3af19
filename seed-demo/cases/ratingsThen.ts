import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { limitsNow } from '@/lib/records/view/case/limitsNow'
import { ratingAt, ratingSettings } from '@/lib/records/view/setpoint'
import type { Team } from '../team'
import type { House, Stage } from './houses'

export type Limits = NonNullable<ReadingBody['against']>

/** What the phones knew of a switch's rating on a morning: what a reading of that day writes down. */
export type RatingsThen = (house: House, stage: Stage, on: string) => Limits

/** Looks ratings up as they stood, from what the team has on file by now. Reports that are said later are not seen. */
export function openRatingsThen(team: Team): RatingsThen {
  const file = foldTeamFile(team.records())
  const rangeOf = (positionId: string) => file.positions.get(file.keptId(positionId))?.body.rangeId
  const reported = [...file.reports.values()].map(({ at, body }) => ({
    at,
    rangeId: rangeOf(body.positionId),
  }))
  const other = [...file.settlements.values(), ...file.supersessions.values()].map(({ at }) => ({ at }))
  const said = [...reported, ...other.map(({ at }) => ({ at, rangeId: undefined }))]
  const then = new Map<number, { file: TeamFile; settings: RatingSettings }>()
  const known = new Map<string, Limits>()

  const thenOn = (morning: string) => {
    const saidBy = said.filter(({ at }) => at < morning).length
    const found = then.get(saidBy)
    if (found !== undefined) return found
    const old = fileOn(file, morning)
    const made = { file: old, settings: ratingSettings(old, morning) }
    then.set(saidBy, made)
    return made
  }

  return (house, stage, on) => {
    const morning = `${on}T00:00:00.000Z`
    const rangeId = rangeOf(stage.positionId)
    const bearing = said.filter((each) => each.at < morning && (each.rangeId ?? rangeId) === rangeId).length
    const key = [stage.at, house.furnaceId, bearing].join(' ')
    const found = known.get(key)
    if (found !== undefined) return found
    const position = file.positions.get(stage.positionId)
    if (position === undefined) throw new RangeError(`The demo has no position ${stage.at} on file`)
    const furnace = { id: house.furnaceId, elevationMetres: house.elevationMetres, ...revisionOf(house) }
    const { file: old, settings } = thenOn(morning)
    const limits = limitsNow(ratingAt(old, position, furnace, { ...settings, now: morning }))
    known.set(key, limits)
    return limits
  }
}

const revisionOf = ({ printed }: House) => (printed === undefined ? {} : { revision: printed })

/** The file without what was said later. */
function fileOn(file: TeamFile, moment: string): TeamFile {
  const before = <Body>(entries: ReadonlyMap<string, Entry<Body>>) =>
    new Map(counting(entries).flatMap((entry) => (entry.at < moment ? [[entry.id, entry] as const] : [])))
  return {
    ...file,
    reports: before(file.reports),
    settlements: before(file.settlements),
    supersessions: before(file.supersessions),
    parts: before(file.parts),
  }
}
