import { closesWhen, isHot } from './phases'
import { meanOf, pooledScatter } from './repeatability'
import type { Reading } from './types'

/** The value that is held against a limit, and how far its repeats scatter. */
type JudgedValue = {
  pascals: number
  scatterPascals: number
  /** Averaging over separate starts has not made the scatter smaller, and can't. */
  scatterWhole: boolean
  /** The display averaged and no extreme was held: the true one may be worse. */
  extremeHidden: boolean
}

/**
 * Cold, the mean is judged. Hot, the extreme that endangers the contact: the lowest, or the highest for a switch
 * that opens on rise. An extreme carries the scatter of the samples whole; that it lies far from them is what it says,
 * not a doubt about it. The mean of one run carries it whole too, the held extremes counted in, because its samples
 * are no independent repeats; over separate starts it is divided by the root of their number.
 */
export function judgedValue(reading: Reading, usualScatterPascals: number): JudgedValue {
  const { samples, lowest, highest } = reading
  if (!isHot(reading.phase)) {
    const scatter = pooledScatter(samples, usualScatterPascals, lowest, highest)
    const starts = reading.separateStarts === true ? samples.length : 1
    return {
      pascals: meanOf(samples),
      scatterPascals: scatter / Math.sqrt(starts),
      scatterWhole: false,
      extremeHidden: false,
    }
  }
  const downward = closesWhen(reading.kind) === 'enough'
  const held = downward ? lowest : highest
  const all = held === undefined ? samples : [...samples, held]
  return {
    pascals: downward ? Math.min(...all) : Math.max(...all),
    scatterPascals: pooledScatter(samples, usualScatterPascals),
    scatterWhole: true,
    extremeHidden: reading.averaging === true && held === undefined,
  }
}
