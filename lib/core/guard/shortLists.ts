import { clearsTheLimit, isFactoryPartNamed, isFittedPartRight, judgementAgainst } from './blamed'
import type { Requirement } from './requirement'
import type { CaseState, GuardSettings } from './types'

const unless = (met: boolean, requirement: Requirement): Requirement[] => (met ? [] : [requirement])

/**
 * A switch that will not open: at rest, inducer stopped, hose and wires off, the contact still closed; one confirmed
 * observation is enough. One that opens on rise is closed at rest, so there it is a contact that stays closed at a
 * reading at the switch that should open it. Common practice, no published source.
 */
export function missingForWillNotOpen(state: CaseState, settings: GuardSettings): Requirement[] {
  const { atRest, reading } = state
  const named = unless(isFactoryPartNamed(state.part, settings), 'factory-part-named')
  if (state.kind === 'opens on rise') {
    const stayedClosed =
      judgementAgainst(state, 'opens')?.verdict === 'enough' && reading?.comparison.contacts === 'closed'
    return [
      ...unless(reading?.byTeeAtTheSwitch === true, 'reading-at-the-switch'),
      ...unless(stayedClosed, 'contact-closed-above-opening-point'),
      ...named,
    ]
  }
  return [
    ...unless(atRest?.inducerStopped === true, 'inducer-stopped'),
    ...unless(atRest?.hoseOff === true, 'hose-off'),
    ...unless(atRest?.wiresOff === true, 'wires-off'),
    ...unless(atRest?.contact === 'closed', 'contact-still-closed'),
    ...named,
  ]
}

/**
 * A contact that drops voltage while closed: the reading well beyond the make point, the drop above about 0.5 V under
 * load, terminals clean, repeated twice. Common practice, no published source.
 */
export function missingForVoltageDrop(state: CaseState, settings: GuardSettings): Requirement[] {
  const volts = state.drop?.volts ?? []
  const beyond = ['closes', 'opens'] as const
  const reading = state.reading?.comparison.contacts === 'closed'
  return [
    ...unless(state.drop?.contact === 'closed', 'contact-closed'),
    ...unless(
      reading &&
        beyond.some(
          (against) =>
            (against === 'closes') === (state.kind !== 'opens on rise') &&
            clearsTheLimit(judgementAgainst(state, against), state.kind),
        ),
      'reading-well-beyond-make',
    ),
    ...unless(
      state.drop?.underLoad === true && volts.length > 0 && volts.every((drop) => drop > settings.dropVolts),
      'drop-under-load',
    ),
    ...unless(state.drop?.terminals === 'clear', 'terminals-clean'),
    ...unless(volts.length >= settings.dropMeasurements, 'drop-repeated'),
    ...unless(isFactoryPartNamed(state.part, settings), 'factory-part-named'),
  ]
}

/** A wrong part is replaced as what it is: its own number and the factory's on record, and not the same part. */
export function missingForWrongPart(state: CaseState, settings: GuardSettings): Requirement[] {
  return [
    ...unless(state.part.fitted !== undefined, 'fitted-part-recorded'),
    ...unless(isFactoryPartNamed(state.part, settings), 'factory-part-named'),
    ...unless(isFittedPartRight(state.part) === false, 'part-number-wrong'),
  ]
}
