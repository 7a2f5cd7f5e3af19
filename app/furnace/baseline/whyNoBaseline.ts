import type { Comparison, Reading } from '@/lib/core/reading'
import type { Result } from '@/lib/core/result'

type Taken = {
  reading: Reading
  zeroed: boolean
  byTeeAtTheSwitch: boolean
  /** What the rating says of it; undefined where none is on file. */
  compared: Result<Comparison> | undefined
}

/**
 * Why a reading is no baseline, as sentences; empty when it is one. A baseline is read in a named phase of the run, by
 * a zeroed gauge at the switch itself, on a furnace that is healthy: its contact closed once it runs hot, and not
 * beyond what a trustworthy rating allows.
 */
export function whyNoBaseline({ reading, zeroed, byTeeAtTheSwitch, compared }: Taken): string[] {
  const hot = reading.phase === 'after light-off' || reading.phase === 'steady hot'
  return [
    ...unless(
      reading.phase !== 'rest',
      'At rest no air moves, so it says nothing of what to expect. Read it while the furnace runs, best hot and steady.',
    ),
    ...unless(zeroed, 'Zero the gauge first, both ports open to the room and the hose off. Then read again.'),
    ...unless(
      byTeeAtTheSwitch,
      'Tee the gauge in at the switch, furnace off while teeing in: later readings are taken there and held against this one.',
    ),
    ...unless(
      !hot || reading.contacts !== 'open',
      'The contact was open while it ran, so it is no healthy furnace. Open a case.',
    ),
    ...unless(
      !isOutside(compared),
      'A rating that can be trusted says this does not keep the contact closed, so it is no healthy running value. Open a case.',
    ),
  ]
}

/** Held against a rating that is worth it, the contact would open. */
function isOutside(compared: Result<Comparison> | undefined): boolean {
  if (compared === undefined || !compared.ok) return false
  const { run, kind, standing } = compared.value
  if (standing !== 'Verified' && standing !== 'Supported') return false
  return run?.verdict === (kind === 'opens on rise' ? 'enough' : 'too low')
}

const unless = (is: boolean, sentence: string): string[] => (is ? [] : [sentence])
