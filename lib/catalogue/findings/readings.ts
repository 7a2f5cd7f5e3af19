import { suctionSideSource, twoPortSource } from '../provenance'
import type { WrittenFinding } from './types'

/**
 * What the manometer showed. All but the hand-pump ones are worked out of the case's readings, so that nobody taps a
 * judgement; see lib/catalogue/fromReadings for the rules.
 */
export const readingFindings = {
  'reading-at-start': {
    name: 'Reading from a cold start',
    values: ['beyond make and steady', 'too low from the start', 'near zero, inducer running'],
    asked: 'from readings',
  },
  'flutter-near-the-limit': { name: 'Reading moves to and fro near the limit', asked: 'from readings' },
  'reading-when-hot': {
    name: 'Reading when hot',
    hint: 'Hot gas is thinner, so some fall is normal.',
    values: ['sags, settles above break', 'holds as cold', 'sags through break'],
    asked: 'from readings',
  },
  'regular-pulse': { name: 'Reading beats regularly, every 1 to 3 s', asked: 'from readings' },
  'step-at-blower-start': { name: 'Reading steps down as the air blower starts', asked: 'from readings' },
  'higher-than-expected': {
    name: 'Reading higher than expected',
    asked: 'from readings',
    source: suctionSideSource,
  },
  'no-return-to-zero': { name: 'No return to zero at rest', asked: 'from readings' },
  'recovers-with-intake-off': { name: 'Reading recovers with the intake off', asked: 'from readings' },
  'recovers-with-vent-opened': {
    name: 'Reading recovers with the vent opened at the furnace',
    asked: 'from readings',
  },
  'recovers-after-draining': { name: 'Reading recovers after draining', asked: 'from readings' },
  'recovers-with-window-open': { name: 'Reading recovers with a window open', asked: 'from readings' },
  'low-fire-fine-high-fire-too-low': { name: 'Low fire enough, high fire too low', asked: 'from readings' },
  'ports-to-the-room': {
    name: 'Each port read to the room',
    values: ['as expected', 'both nearer zero', 'both farther from zero'],
    asked: 'from readings',
    source: twoPortSource,
  },
  'moves-with-gusts': { name: 'Reading moves with the gusts', asked: 'from readings' },
  'reading-with-door-off': {
    name: 'Reading with the door off',
    values: ['no change', 'higher', 'lower'],
    usual: { lower: 'almost never' },
    asked: 'from readings',
  },
  'open-beyond-make': {
    name: 'Contact open while the reading is enough to close it',
    asked: 'from readings',
  },
  'leaks-down-on-hand-pump': {
    name: 'Switch leaks down on the hand pump within 10 s',
    hint: 'Off the furnace, the pump’s own line proven tight.',
  },
  'make-on-hand-pump': {
    name: 'Make point on the hand pump',
    hint: 'Off the furnace, slow pull, three times.',
    values: ['in tolerance', 'out of tolerance'],
  },
} as const satisfies Record<string, WrittenFinding>
