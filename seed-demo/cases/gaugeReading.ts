import { toPascals } from '@/lib/core/pressure'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { drawn, happens, normal } from '../drawing'
import { type Habit, habits, type Technician, tobinsNewGauge } from './habits'
import type { Stage } from './houses'
import { heldAtRest, isClosedAt, type Moment, movementAt, pressureAt } from './pressure'
import type { Fault } from './trouble'

type Phase = ReadingBody['phase']

/** What is read: a stage, in a moment, with the faults that act at that time. */
export type Read = Moment & {
  stage: Stage
  faults: readonly Fault[]
  phase: Phase
  when: ReadingBody['when']
}

type Taken = Pick<
  ReadingBody,
  | 'samples'
  | 'lowest'
  | 'secondsWatched'
  | 'movement'
  | 'contacts'
  | 'asTyped'
  | 'byTeeAtTheSwitch'
  | 'zeroed'
  | 'separateStarts'
>

/** Step of each gauge's display between which somebody reads, in its own unit. */
const steps: Readonly<Record<string, number>> = {
  'G-01 yellow': 0.001,
  'G-02 case': 1,
  'G-03 orange': 0.01,
  'G-04 water tube': 0.05,
}

export const gaugeOf = (by: Technician, on: string): string =>
  by === 'tobin' && on >= tobinsNewGauge.from ? tobinsNewGauge.gauge : habits[by].gauge

/** Reads a gauge the way a person does: some samples, the lowest where it matters, and the contact at that moment. */
export function takeReading(random: () => number, habit: Habit, gauge: string, read: Read): Taken {
  const { stage, faults, phase, situation, temperature } = read
  const isResting = phase === 'rest'
  const truth = isResting
    ? heldAtRest(faults)
    : pressureAt(stage, faults, read) * (1 + 0.015 * normal(random))
  const { how, by } = isResting ? { how: 'still' as const, by: 0.1 } : movementAt(faults, situation)
  const howMany = happens(random, 0.7) ? 3 : happens(random, 0.5) ? 2 : 1
  const hundredths = Array.from(
    { length: howMany },
    () => truth + (by > 1 ? drawn(random, [-by, by]) : by * normal(random)),
  )
  const step = steps[gauge] ?? 0.01
  const shown = hundredths.map((value) => asShown(value, habit.unit, step))
  const lowest = asShown(truth - by * (by > 1 ? 1 : 1.5), habit.unit, step)
  const isHot = temperature === 'hot' && !isResting
  const isLong = habit.reads.hot > 0.6 || read.when === 'after repair'
  const watched = Math.round(drawn(random, isLong ? [60, 120] : [25, 75]))
  return {
    samples: shown.map(({ pascals }) => pascals),
    ...(isHot ? { lowest: Math.min(lowest.pascals, ...shown.map(({ pascals }) => pascals)) } : {}),
    secondsWatched: watched,
    ...(by > 1 || happens(random, 0.3) ? { movement: how } : {}),
    contacts: contactsOf(random, read, truth, isHot),
    asTyped: `${shown.map(({ typed }) => typed).join(', ')} ${habit.unit === 'pascals' ? 'Pa' : 'in. w.c.'}`,
    byTeeAtTheSwitch: true,
    zeroed: true,
  }
}

/** As found the contact is forgotten now and then; what is read after a repair is to prove it. */
function contactsOf(
  random: () => number,
  { stage, faults, phase, when }: Read,
  truth: number,
  isHot: boolean,
) {
  if (phase === 'rest')
    return faults.some(({ stuckClosed }) => stuckClosed) ? ('closed' as const) : ('open' as const)
  if (!happens(random, when === 'after repair' ? 1 : 0.8)) return 'not read' as const
  return isClosedAt(stage, faults, truth, isHot ? 'hot' : 'cold') ? ('closed' as const) : ('open' as const)
}

/** As the display shows it, in its own unit, and what that is in pascals. */
function asShown(hundredths: number, unit: Habit['unit'], step: number): { typed: string; pascals: number } {
  const pascals = toPascals(Math.max(0, hundredths) / 100, 'inH2O')
  const value = unit === 'pascals' ? pascals : Math.max(0, hundredths) / 100
  const decimals = step >= 1 ? 0 : step >= 0.01 ? 2 : 3
  const typed = (Math.round(value / step) * step).toFixed(decimals)
  return { typed, pascals: unit === 'pascals' ? Number(typed) : toPascals(Number(typed), 'inH2O') }
}
