import type { EndingBody, EndingWay } from '@/lib/records/kinds/ending'
import type { putBackItems } from '@/lib/records/putBackItems'

/** Each way of ending: what it means, and what it counts for. */
export const wayWords: Readonly<Record<EndingWay, readonly [words: string, line: string]>> = {
  'repaired and proven': [
    'Repaired and proven',
    'The cause is confirmed and put right, and readings taken afterwards show it. Nothing else counts as a fix.',
  ],
  'repaired, not proven': [
    'Repaired, not proven',
    'Something was put right, but not everything was read afterwards. The case stays open, and its cause is presumed.',
  ],
  'waiting for part': [
    'Waiting for part',
    'The part is on order and somebody goes there again. The case stays open.',
  ],
  'no fault found': [
    'No fault found',
    'Nothing was found wrong while you were there. It counts as no fix, and a day to follow it up is set.',
  ],
  'repair declined': [
    'Repair declined',
    'Whoever decides for the house said no. It counts as no fix. A danger cannot be declined: leave it off.',
  ],
  'left off': [
    'Left off',
    'Not fit to run: off, tagged, with a shut-down notice. The case stays open until the notice is lifted.',
  ],
}

/**
 * How a visit ended, in words; one from which something is missing is only said to have ended so.
 *
 *   saidHow('repaired and proven', false)  // 'Said to be repaired and proven, not finished'
 */
export const saidHow = (how: EndingWay, finished: boolean): string =>
  finished ? wayWords[how][0] : `Said to be ${how}, not finished`

export const testWords: Readonly<Record<NonNullable<EndingBody['confirmingTest']>, string>> = {
  confirmed: 'It confirmed the cause',
  'not confirmed': 'It did not confirm it',
  'not done': 'Not done',
}

/** What has to be back, as statements that are true once it is. */
export const putBackWords: Readonly<Record<(typeof putBackItems)[number], string>> = {
  'tee out': 'Tee out of the hose',
  'hose on its own port': 'Hose on its own port',
  'test holes plugged': 'Test holes plugged',
  'trap primed': 'Trap primed with water',
  'joints sealed': 'Joints of the vent sealed',
  'door on': 'Door on',
}
