import type { FindingId, ValueOf } from '@/lib/catalogue/findings'
import type { ReadingSituation } from '@/lib/catalogue/fromReadings/situations'
import type { Movement } from '@/lib/catalogue/fromReadings/types'
import type { Weather } from '../weather'

/** From and to; every value between is as likely as another. */
export type Span = readonly [from: number, to: number]

/** How often something is really seen when somebody looks: a number for 'seen', or numbers for some of many values. */
export type Shows = {
  readonly [Id in FindingId]?: [ValueOf<Id>] extends ['seen' | 'ruled out']
    ? number
    : { readonly [Value in ValueOf<Id> & string]?: number }
}

/** What a cause does to the pressure at the switch, or to the switch. */
export type Effect = {
  /** What is left of a healthy reading from a cold start, and hot, as a share. Nothing said: all of it. */
  cold?: Span
  hot?: Span
  /** And on high fire, as a share of that. */
  onHighFire?: Span
  /** At a switch between two ports, instead of all that. */
  acrossPorts?: Span
  /** How the display moves, by how many hundredths of an inch to either side, and how often it does. */
  moves?: { how: Movement; by: Span; chance: number }
  /** Hundredths that stay in hose or port at rest, and how often. */
  heldAtRest?: { hundredths: Span; chance: number }
  /** Undone while this is done. */
  undoneBy?: ReadingSituation
  /** Hundredths that the air blower takes away as it starts. */
  blowerTakes?: Span
  /** Door off, as a share of the reading with the door on. */
  doorOff?: Span
  /** The switch closes at so many times its make point. */
  closesAt?: Span
  /** It is closed whatever the pressure. */
  stuckClosed?: true
  /** How often the contact is found open although it should be closed. */
  failsToConduct?: number
}

/** One cause as it really is in the invented valley. */
export type TrueCause = {
  /** Cases in a hundred: in Quarlfoot, in Dunmarrow, in Upper Vennet. */
  share: readonly [number, number, number]
  /** How many times as often in some weather. */
  weather?: Readonly<Partial<Record<Weather, number>>>
  /** Only where the furnace makes water, has two stages, or takes its air from the room or from outdoors. */
  only?: 'condensing' | 'two stages' | 'room air' | 'outdoor air'
  shows: Shows
  effect: Effect
  /** What is written down as done, one of these; with the parts that it took. */
  mended: readonly string[]
  parts?: readonly string[]
  minutes: Span
  /** How often the part has to be ordered first. */
  ordered?: number
  /** Only the consequence taken away: it runs, and the cause stays. */
  passing?: { done: readonly string[]; chance: number }
  /** How often another cause has a share in it. */
  brings?: Readonly<Record<string, number>>
}
