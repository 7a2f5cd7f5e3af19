import { type FindingEntry, type FindingId, findings } from '@/lib/catalogue/findings'
import { happens, pickWeighted } from '../drawing'
import { type Habit, seldomLookedAt, usuallyLookedAt } from './habits'
import type { House } from './houses'
import type { Trouble } from './trouble'
import { truthOf } from './truth'
import { sharesOf, trailOf } from './truth/trails'
import { companies, usuallyShown } from './truth/usual'
import type { Day, Weather } from './weather'

export type Seen = { finding: FindingId; value: string }

/** A case as somebody comes upon it. */
export type Scene = {
  house: House
  trouble: Trouble
  day: Day
  /** A cause that is suspected, rightly or not. */
  suspected: readonly string[]
  /** The same furnace was seen to within the last 30 days. */
  isRepeat: boolean
}

/** What weather alone makes people say and see, whatever the cause: in odds. It is another cause's finding as often. */
const weatherTimes: Readonly<Partial<Record<Weather, Readonly<Partial<Record<FindingId, number>>>>>> = {
  snow: { 'after-snowfall-or-drift': 6, 'snow-line-near-pipes': 4 },
  'bitter cold': {
    'long-runs-in-bitter-cold': 4,
    'frost-in-a-cold-run': 2,
    'first-call-of-the-morning': 1.5,
  },
  'first cold': { 'first-start-of-season': 4 },
  gale: { 'in-high-wind': 8, 'in-one-wind-direction': 3 },
  thaw: { 'in-thaw-or-rain': 8 },
}

/** How often a finding is put down wrongly: not noticed, or noticed where there is nothing. */
const overlooked = 0.07
const imagined = 0.02

/** Everything that one technician looks at and taps on one visit, in the order of the list. */
export function looksOf(random: () => number, habit: Habit, scene: Scene): Seen[] {
  return findings.flatMap((finding): Seen[] => {
    const id = finding.id as FindingId
    if (!isThere(finding, id, scene.house) || !happens(random, chanceOfLook(id, finding, habit, scene)))
      return []
    const value = factOf(id, scene) ?? drawValue(random, finding, id, scene)
    return [{ finding: id, value }]
  })
}

/** Hand-pump findings come with the check of a switch, readings by themselves, and what a house lacks nobody looks at. */
function isThere({ asked, group }: FindingEntry, id: FindingId, house: House): boolean {
  if (asked === 'from readings' || group === 'readings') return false
  if (group === 'condensate' && !house.condensing) return id === 'trap' && house.prone > 1
  if (id === 'condensate-pump') return house.drainRoute === 'in a pump'
  if (id === 'shared-drain-backs-up') return house.drainRoute === 'in a line shared with the coil'
  if (id === 'drops-on-stage-change' || id === 'low-fire-only') return house.stages.length > 1
  if (id.startsWith('intake') || id === 'plume-drawn-into-intake' || id === 'pipe-ends-on-separate-walls')
    return house.airFrom !== 'the room'
  return true
}

function chanceOfLook(id: FindingId, { group }: FindingEntry, habit: Habit, scene: Scene): number {
  const skipped = habit.skips.includes(id) ? 0.15 : 1
  const usual = Math.min(0.95, (usuallyLookedAt[id] ?? seldomLookedAt) * habit.looks[group]) * skipped
  const { main, contributing } = scene.trouble
  const trails = [main, ...(contributing === undefined ? [] : [contributing])]
  const onTrail = trails.some((cause) => trailOf(cause).has(id)) ? habit.pursues : 0
  const onWrongTrail = scene.suspected.some((cause) => trailOf(cause).has(id)) ? 0.4 : 0
  return 1 - (1 - usual) * (1 - onTrail * skipped) * (1 - onWrongTrail * skipped)
}

/** What is so because the house is so. */
function factOf(id: FindingId, { house, trouble, isRepeat }: Scene): string | undefined {
  if (id === 'furnace-kind') return house.condensing ? 'condensing' : 'not condensing'
  if (id === 'combustion-air-from') return house.airFrom
  if (id === 'drain-route') return house.drainRoute
  if (id === 'again-within-30-days') return isRepeat ? 'seen' : 'ruled out'
  if (id === 'trap' && !house.condensing) return 'none: does not condense'
  if (id === 'elevation-kit' && trouble.main !== 'elevation-kit-missing')
    return house.band > 0 ? 'called for and fitted' : 'not called for here'
  return undefined
}

function drawValue(random: () => number, { values }: FindingEntry, id: FindingId, scene: Scene): string {
  const twoValued = values[0] === 'seen'
  const good = twoValued ? 'ruled out' : values[0]!
  const { house, day, trouble } = scene
  const times = (weatherTimes[day.weather]?.[id] ?? 1) * companyTimes(id, house)
  const shares = Object.entries(sharesIn(trouble, id)).map(
    ([value, share]) => [value, timesOdds(share, times)] as const,
  )
  const left = Math.max(0, 1 - shares.reduce((total, [, share]) => total + share, 0))
  const [drawn] = pickWeighted(random, [...shares, [good, left] as const], ([, share]) => share)
  if (drawn === good) return twoValued && happens(random, imagined) && !isGrave(id) ? 'seen' : good
  return happens(random, overlooked) && !isGrave(id) ? good : drawn
}

/** A main cause's shares, and a contributing one's beside them; else the usual ones. */
function sharesIn({ main, contributing }: Trouble, id: FindingId): Readonly<Record<string, number>> {
  const usual = sharesOf(usuallyShown, id)
  const ofMain = sharesOf(truthOf(main).shows, id)
  const own = Object.keys(ofMain).length > 0 ? ofMain : usual
  if (contributing === undefined) return own
  const other = sharesOf(truthOf(contributing).shows, id)
  return Object.keys(other).length === 0
    ? own
    : Object.fromEntries(
        [...new Set([...Object.keys(own), ...Object.keys(other)])].map((value) => [
          value,
          1 - (1 - (own[value] ?? 0)) * (1 - 0.7 * (other[value] ?? 0)),
        ]),
      )
}

const companyTimes = (id: FindingId, house: House): number =>
  companies.reduce(
    (product, { findings: members, times }, at) =>
      members.includes(id) ? product * (house.companies[at] ? times : 0.7) : product,
    1,
  )

/** A share whose odds are so many times as high. */
const timesOdds = (share: number, times: number): number =>
  share >= 1 ? 1 : (share * times) / (1 - share + share * times)

/** Nobody overlooks these, and nobody imagines them. */
const grave = new Set<FindingId>([
  'jumper-or-bypass',
  'switch-closed-at-rest',
  'general-purpose-switch-fitted',
  'wrong-elevation-switch-fitted',
  'cracked-heat-exchanger',
  'vent-separated',
  'flue-co-high',
  'flame-roll-out',
  'scorching',
  'water-on-controls',
  'room-co-above-limit',
])
const isGrave = (id: FindingId): boolean => grave.has(id)
