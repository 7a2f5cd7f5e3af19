import type { CaseReading } from '@/lib/catalogue/fromReadings'
import { toPascals } from '@/lib/core/pressure'
import {
  compareReading,
  type Expected,
  type Instrument,
  type Limit,
  type RatingForComparison,
  type Reading,
  usualReadingSettings,
} from '@/lib/core/reading'

const inches = (value: number) => toPascals(value, 'inH2O')
const limit = (value: number): Limit => ({
  pascals: inches(value),
  toleranceAbove: inches(0.05),
  toleranceBelow: inches(0.05),
  kind: 'nominal',
  standing: 'Verified',
})

/** An invented switch: closes at 0.70, opens at 0.55, each ± 0.05 in. w.c. */
const rating: RatingForComparison = {
  closes: limit(0.7),
  opens: limit(0.55),
  kind: 'one-port',
  between: 'port and room',
  tap: 'inducer inlet',
  stage: 'not stated',
  sense: 'suction',
}

const gauge: Instrument = {
  percentOfReading: 1,
  counts: 1,
  spanPascals: inches(5),
  resolutionPascals: inches(0.001),
  combine: 'plus',
  zeroed: true,
}

export type Given = Partial<Omit<Reading, 'samples' | 'lowest' | 'highest'>> & {
  at?: string
  inches: readonly number[]
  lowestInches?: number
  highestInches?: number
  expectedInches?: number
  /** Readings of this furnace when it was well, for compareReading. */
  baselineInches?: readonly number[]
  situation?: CaseReading['situation']
  movement?: CaseReading['movement']
  zeroed?: boolean
}

/** A reading of a case, compared with the invented switch by compareReading itself where that can be done. */
export function caseReading(given: Given): CaseReading {
  const {
    at = '2031-01-10T08:00:00Z',
    inches: samples,
    lowestInches,
    highestInches,
    expectedInches,
    baselineInches,
    situation = 'as found',
    movement,
    zeroed = true,
    ...rest
  } = given
  const reading: Reading = {
    samples: samples.map(inches),
    ...(lowestInches !== undefined && { lowest: inches(lowestInches) }),
    ...(highestInches !== undefined && { highest: inches(highestInches) }),
    sense: 'suction',
    kind: 'one-port',
    between: 'port and room',
    tap: 'inducer inlet',
    stage: 'single stage',
    door: 'on',
    secondsWatched: 60,
    phase: 'pre-purge',
    contacts: 'not read',
    ...rest,
  }
  const expected: Expected | undefined = baselineInches && {
    kind: 'baselines',
    pascals: baselineInches.map(inches),
  }
  const compared = compareReading({
    reading,
    instrument: { ...gauge, zeroed },
    rating,
    ...(expected && { expected }),
    settings: { ...usualReadingSettings, now: '2031-01-10' },
  })
  return {
    at,
    reading,
    situation,
    zeroed,
    ...(compared.ok && { comparison: compared.value }),
    ...(movement && { movement }),
    ...(expectedInches !== undefined && { expectedPascals: inches(expectedInches) }),
  }
}

/** Minutes after eight in the morning. */
export const at = (minutes: number): string =>
  new Date(Date.parse('2031-01-10T08:00:00Z') + minutes * 60_000).toISOString()
