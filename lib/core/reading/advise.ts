import { type AdviceCode, inOrder } from './advice'
import { airPathOf } from './airPath'
import { extremeHeld } from './flutter'
import { closesWhen, isHot } from './phases'
import type { Comparison, Judgement, RatingForComparison, Reading } from './types'

/** What a verdict means for the contact: it leaves the switch closed, it does not, or it can't be said. */
type Outcome = 'closed' | 'open' | 'unclear'

export function outcomeOf(judgement: Judgement, kind: Reading['kind']): Outcome {
  if (judgement.verdict === 'too close to call') return 'unclear'
  return judgement.verdict === closesWhen(kind) ? 'closed' : 'open'
}

/** Whether the switch would close at this reading whatever state it was in, by the point where it closes. */
export type ClosesAgain = Outcome | 'not on file'

type Facts = {
  reading: Reading
  rating: RatingForComparison
  comparison: Omit<Comparison, 'advice' | 'assumed' | 'goodMargin'>
  closesAgain: ClosesAgain
  calibrationPast: boolean
}

/** The judgement that leads: hot the run, cold the start; the other one only where the limit for it is missing. */
export const leading = (comparison: Pick<Comparison, 'start' | 'run' | 'phase'>): Judgement | undefined =>
  isHot(comparison.phase) ? (comparison.run ?? comparison.start) : (comparison.start ?? comparison.run)

function whenOpen(facts: Facts, outcome: Outcome): AdviceCode[] {
  const { reading } = facts
  const opensOnRise = reading.kind === 'opens on rise'
  const airPath: AdviceCode[] = opensOnRise ? ['find-what-raises-the-pressure'] : airPathOf(reading)
  if (outcome === 'open') return ['open-contact-agrees-leave-it-fitted', ...airPath]
  // Hot, it has opened: something took the margin, however the reading is settled.
  if (outcome === 'unclear') return ['too-close-leave-it-fitted', ...(isHot(reading.phase) ? airPath : [])]
  const codes: AdviceCode[] = ['before-the-switch-is-called-faulty', 'watch-for-a-minute']
  if (facts.closesAgain === 'not on file')
    codes.push(opensOnRise ? 'closing-point-not-on-file' : 'make-point-not-on-file')
  else if (facts.closesAgain !== 'closed' && !(isHot(reading.phase) && extremeHeld(reading)))
    codes.push('open-between-break-and-make')
  return codes
}

/** Closed at a reading that should have opened it, or that never should have closed it. */
function whenClosedAgainstTheReading(facts: Facts, judgement: Judgement): AdviceCode[] {
  const { reading } = facts
  const hot = isHot(reading.phase)
  const highest = Math.max(...reading.samples, reading.highest ?? 0)
  if (reading.kind === 'opens on rise') {
    if (judgement.against === 'closes') return ['break-point-not-on-file']
    return judgement.against === 'opens' ? ['stop-closed-above-its-opening-point'] : ['action-not-stated']
  }
  if (hot && judgement.against === 'closes') return ['break-point-not-on-file']
  if (hot && judgement.against === 'not stated') return ['action-not-stated']
  // A dip that lasts a moment need not have been the moment at which the contact was read.
  if (hot && highest >= judgement.limit.pascals) return ['read-contacts-at-the-same-moment']
  return ['stop-closed-below-its-rating']
}

function whenClosed(facts: Facts, judgement: Judgement, outcome: Outcome): AdviceCode[] {
  if (outcome === 'open') return whenClosedAgainstTheReading(facts, judgement)
  if (outcome === 'unclear') return ['too-close-leave-it-fitted']
  const codes: AdviceCode[] = ['look-past-this-switch']
  if (isHot(facts.reading.phase) && facts.closesAgain === 'open') codes.push('closed-between-break-and-make')
  if (facts.reading.phase === 'at make' && facts.reading.kind !== 'opens on rise')
    codes.push('caught-above-its-limit')
  return codes
}

function aboutTheRating(facts: Facts, judgement: Judgement): AdviceCode[] {
  const codes: AdviceCode[] = []
  const { reading, rating } = facts
  if (judgement.against === 'not stated') codes.push('action-not-stated')
  else if (reading.kind === 'opens on rise') {
    if (rating.opens === undefined) codes.push('break-point-not-on-file')
  } else if (isHot(reading.phase) ? rating.opens === undefined : rating.closes === undefined)
    codes.push(isHot(reading.phase) ? 'break-point-not-on-file' : 'make-point-not-on-file')
  return codes
}

function aboutTheMeasurement(facts: Facts, judgement: Judgement, outcome: Outcome): AdviceCode[] {
  const { reading, comparison } = facts
  const codes: AdviceCode[] = []
  if (reading.averaging === true && !extremeHeld(reading)) codes.push('read-with-minimum-hold')
  if (isHot(reading.phase) && comparison.steady === 'not watched long enough')
    codes.push('watch-for-a-minute')
  if (judgement.moreSamples === 'a finer manometer is needed') codes.push('finer-manometer')
  else if (judgement.moreSamples !== undefined) codes.push('more-separate-starts')
  if (comparison.flutter) codes.push('find-what-moves-it')
  if (comparison.higherThanExpected === true)
    codes.push(
      reading.tap === 'vent side' || reading.sense === 'pressure'
        ? 'look-at-the-outlet-side'
        : 'look-at-the-inlet-side',
    )
  if (comparison.higherThanExpected === undefined && outcome === 'closed') codes.push('nothing-to-expect-by')
  if (judgement.thin) codes.push('thin-no-proof')
  if (facts.calibrationPast) codes.push('calibration-out-of-date')
  const judgements = [comparison.start, comparison.run]
  if (outcome === 'closed' || judgements.some((each) => each?.verdict === 'enough')) codes.push('test-for-co')
  return codes
}

/**
 * What to do about a comparison, in order. A danger stands alone. With the contact not read, nothing is said about
 * the switch but that it has to be read.
 */
export function advise(facts: Facts): AdviceCode[] {
  const judgement = leading(facts.comparison)
  if (judgement === undefined) throw new RangeError('advise requires a comparison with a judgement')
  const { contacts, kind } = facts.reading
  const outcome = outcomeOf(judgement, kind)
  const aboutTheSwitch: AdviceCode[] =
    contacts === 'not read'
      ? ['read-contacts-at-the-same-moment']
      : contacts === 'open'
        ? whenOpen(facts, outcome)
        : whenClosed(facts, judgement, outcome)
  const danger = aboutTheSwitch.filter((code) => code.startsWith('stop-'))
  if (danger.length > 0) return danger
  return inOrder(
    new Set([
      ...aboutTheSwitch,
      ...aboutTheRating(facts, judgement),
      ...aboutTheMeasurement(facts, judgement, outcome),
    ]),
  )
}
