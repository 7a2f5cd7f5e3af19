import { type Range, ranges } from '../catalogue'
import { drawn, happens, pick, pickWeighted } from '../drawing'
import { type Site, sites } from '../furnaces'
import { makers } from '../makers'
import { type Branch, branches } from '../names'
import { places } from '../positions'
import type { Team } from '../team'
import type { SwitchPoints } from '../writing'
import type { Technician } from './habits'
import { park } from './park'
import { addressesIn, plateOf } from './plates'
import { trueCauses } from './truth'
import { companies } from './truth/usual'

/** One switch that proves air on a stage, and what this furnace shows there when nothing is wrong. */
export type Stage = {
  at: string
  positionId: string
  place: (typeof places)[keyof typeof places]
  points: SwitchPoints
  /** Hundredths of an inch, cold and hot. */
  healthy: { cold: number; hot: number }
}

/** A furnace as it really is, beside what is on file of it. */
export type House = {
  furnaceId: string
  site: string
  branch: Branch
  range: Range
  band: number
  /** Place among the family's revision ranges, and the letter on the plate. */
  revision: number
  printed: string | undefined
  elevationMetres: number
  condensing: boolean
  airFrom: 'the room' | 'outdoors, by its own pipe'
  drainRoute: 'by gravity at an open drain' | 'in a pump' | 'in a line shared with the coil'
  stages: readonly Stage[]
  /** Its other air switches, of which the sheets state no stage: a repair is proven at them as well. */
  beside: readonly Stage[]
  /** How many times as often as others it stops, and with what most of all. */
  prone: number
  weakness: string | undefined
  /** Which findings come in company here: see truth/usual. */
  companies: readonly boolean[]
  /** The day from which it is on file. */
  since: string
}

/** In the first autumn the furnaces under contract were typed in from the cards. */
const cardDays = ['2022-09-27', '2022-09-28', '2022-09-29', '2022-09-30', '2022-10-03', '2022-10-04'] as const

/** Puts the furnaces of the park on file: those on which cases are drawn. */
export function openHouses(team: Team, random: () => number): House[] {
  let card = 0
  return (Object.keys(park) as Branch[]).flatMap((branch) => {
    const addresses = addressesIn(branch)
    return park[branch].flatMap(({ range: key, howMany, revision }) => {
      const range = rangeNamed(key)
      return Array.from({ length: howMany }, () => {
        const on = cardDays[Math.floor((card * cardDays.length) / 130) % cardDays.length]!
        const by = (['piet', 'dunja'] as const)[card++ % 2]!
        const plate = plateOf(random, branch, addresses(), range, revision && pick(random, revision))
        const body = { ...plate, rangeId: team.rangeId(key) }
        const furnaceId = team.say({ kind: 'furnace', by, on, pause: [1, 4], body })
        return houseOf(team, random, { ...plate, branch, range, furnaceId, since: on })
      })
    })
  })
}

/** A furnace that was on file before, as it really is. */
export function houseAt(team: Team, random: () => number, siteLabel: string): House {
  const site = sites.find((each) => each.siteLabel === siteLabel)
  if (site === undefined) throw new RangeError(`The demo has no furnace at “${siteLabel}”`)
  const { elevationMetres = branches[site.branch].elevationMetres, on } = site
  const furnaceId = team.furnaceId(siteLabel)
  return houseOf(team, random, {
    ...site,
    range: rangeNamed(site.range),
    elevationMetres,
    furnaceId,
    since: on,
  })
}

const rangeNamed = (key: string): Range => ranges.find((range) => range.key === key)!

type Known = Pick<Site, 'siteLabel' | 'branch' | 'revision'> & {
  range: Range
  elevationMetres: number
  furnaceId: string
  since: string
}

/** @throws RangeError where no switch of the range proves air on a stage */
function houseOf(team: Team, random: () => number, site: Known): House {
  const { range, branch, elevationMetres, revision: printed } = site
  const band = Math.max(
    0,
    makers[range.maker].bands.findLastIndex(
      ({ fromMetres = Number.NEGATIVE_INFINITY }) => elevationMetres >= fromMetres,
    ),
  )
  const revisions = range.family.revisions ?? []
  const revision = Math.max(
    0,
    revisions.findLastIndex(({ from }) => (printed ?? '') >= (from ?? '')),
  )
  const condensing = range.family.heat === 'condensing'
  const stages = range.family.positions.flatMap(({ place }): Stage[] => {
    const described = places[place]
    const isProving =
      described.stage !== 'not stated' && (described.kind === 'one-port' || described.kind === 'two-port')
    if (!isProving) return []
    const at = `${range.key} / ${place}`
    const points = team.points(at, { band, revision })
    const cold = points.make + Math.max(17, points.make * 0.28) + random() * 0.16 * points.make
    const hot = cold * drawn(random, [0.93, 0.98])
    return [{ at, positionId: team.positionId(at), place: described, points, healthy: { cold, hot } }]
  })
  const beside = range.family.positions.flatMap(({ place }): Stage[] => {
    const described = places[place]
    const provesAir = described.kind === 'one-port' || described.kind === 'opens on rise'
    if (!provesAir || described.stage !== 'not stated') return []
    const at = `${range.key} / ${place}`
    const points = team.points(at, { band, revision })
    const share = described.kind === 'one-port' ? 1.6 : 0.5
    const healthy = { cold: points.make * share, hot: points.make * share * 0.96 }
    return [{ at, positionId: team.positionId(at), place: described, points, healthy }]
  })
  if (stages.length === 0) throw new RangeError(`Nothing proves air on a stage of ${range.key}`)
  const outdoorAir = condensing && happens(random, 0.82)
  return {
    furnaceId: site.furnaceId,
    site: site.siteLabel,
    branch,
    range,
    band,
    revision,
    printed,
    elevationMetres,
    condensing,
    airFrom: outdoorAir ? 'outdoors, by its own pipe' : 'the room',
    drainRoute: pickWeighted(
      random,
      ['by gravity at an open drain', 'in a pump', 'in a line shared with the coil'] as const,
      (route) => (route === 'by gravity at an open drain' ? 0.62 : 0.19),
    ),
    stages,
    beside,
    prone: 0.25 - Math.log(1 - random()),
    weakness: happens(random, 0.35) ? pick(random, Object.keys(trueCauses)) : undefined,
    companies: companies.map(({ likely }) => happens(random, likely)),
    since: site.since,
  }
}

/** Whose branch it is: who goes there unless somebody else is free. */
export const technicianOf: Readonly<Record<Branch, readonly [Technician, ...Technician[]]>> = {
  Quarlfoot: ['ott'],
  Dunmarrow: ['sunniva', 'tobin'],
  'Upper Vennet': ['lale'],
}
