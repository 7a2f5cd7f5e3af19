import { formatPressure } from '@/lib/core/pressure'
import { failure, type Result, success } from '@/lib/core/result'
import type { AdviceCode } from './advice'
import { meanOf } from './repeatability'
import type { Comparison, Instrument, Reading, ReadingSettings } from './types'

/** Of a gauge that was not zeroed, whatever it shows. */
export const notZeroed =
  'Zero first: the gauge was not zeroed before this reading. Open both its ports to the room, zero it, and read again.'

/** What the contact says at rest: a switch that opens on rise is closed there, every other kind open. */
function adviceAtRest(reading: Reading): AdviceCode[] {
  if (reading.contacts === 'not read') return ['read-contacts-at-the-same-moment']
  if (reading.kind === 'opens on rise')
    return reading.contacts === 'closed' ? ['rest-agrees'] : ['before-the-switch-is-called-faulty']
  return reading.contacts === 'closed' ? ['stop-closed-at-rest'] : ['rest-agrees']
}

/**
 * A reading at rest, the inducer stopped: nothing is judged against the rating. A gauge that was not zeroed, or shows
 * more than the limit, has to be zeroed first; a contact that is closed when it should be open is said even then.
 */
export function atRest(
  reading: Reading,
  instrument: Pick<Instrument, 'zeroed'>,
  settings: Pick<ReadingSettings, 'restZeroLimitPascals'>,
): Result<Comparison> {
  const shown = meanOf(reading.samples)
  const closed = reading.contacts === 'closed' && reading.kind !== 'opens on rise'
  const leaveOff = closed ? ' The contact is closed at rest: until that is explained, leave it off.' : ''
  if (!instrument.zeroed) return failure('zero-first', `${notZeroed}${leaveOff}`)
  if (shown > settings.restZeroLimitPascals)
    return failure(
      'zero-first',
      `Zero first: at rest the gauge shows ${formatPressure(shown, 'inH2O', 3)} (${formatPressure(shown, 'Pa', 1)}). Take the hose off the gauge, zero it open to the room, and read again. If it goes away from zero only with the hose on, suction or water is held in hose or port: power off, clear them.${leaveOff}`,
    )
  return success({
    kind: reading.kind,
    phase: reading.phase,
    contacts: reading.contacts,
    flutter: false,
    steady: 'not watched long enough',
    goodMargin: false,
    openPoints: [],
    assumed: [],
    advice: adviceAtRest(reading),
  })
}
