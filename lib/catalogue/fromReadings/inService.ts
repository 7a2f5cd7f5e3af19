import type { Observations } from '@/lib/core/diagnosis'
import { isSamePlace, nearestTo } from './pairing'
import { gravestOf, type SeenOrNot, seenOnce } from './said'
import { isAtLeast, pairedWithinMinutes, thresholds } from './thresholds'
import type { CaseReading } from './types'
import { isAsInService, isNearZero, meanOf, temperatureOf } from './usable'

/** Cold, against the make point; next to nothing is said whatever the phase. */
function atStart(one: CaseReading) {
  if (isNearZero(one, thresholds.nearZero)) return 'near zero, inducer running'
  const { start, steady } = one.comparison ?? {}
  if (temperatureOf(one) !== 'cold' || start === undefined) return undefined
  if (start.verdict === 'too low') return 'too low from the start'
  return start.verdict === 'enough' && steady === 'steady' ? 'beyond make and steady' : undefined
}

/** Within reach of the limit that it was judged against, and moving. */
function flutters({ comparison }: CaseReading): SeenOrNot {
  const judgement = comparison?.start ?? comparison?.run
  if (comparison === undefined || judgement === undefined) return undefined
  if (comparison.flutter)
    return isAtLeast(thresholds.marginal, Math.abs(judgement.marginPascals)) ? 'seen' : undefined
  return comparison.steady === 'steady' ? 'ruled out' : undefined
}

/** Hot, against the break point, and against the cold reading of the same run. */
function whenHot(one: CaseReading, all: readonly CaseReading[]) {
  const { run } = one.comparison ?? {}
  if (temperatureOf(one) !== 'hot' || run === undefined) return undefined
  if (run.verdict === 'too low') return 'sags through break'
  if (run.verdict !== 'enough' || one.reading.phase !== 'steady hot') return undefined
  const cold = nearestTo(
    one,
    all.filter((other) => temperatureOf(other) === 'cold' && isSamePlace(one, other)),
    pairedWithinMinutes,
  )
  const falls = cold.map((other) => meanOf(other) - meanOf(one))
  if (falls.length === 0) return undefined
  if (falls.every((fall) => isAtLeast(fall, thresholds.change))) return 'sags, settles above break'
  return falls.every((fall) => isAtLeast(thresholds.noChange, fall)) ? 'holds as cold' : undefined
}

/** The contact at the very moment of a reading that is enough to close it. */
function openBeyondMake(one: CaseReading): SeenOrNot {
  const { start, contacts } = one.comparison ?? {}
  if (temperatureOf(one) !== 'cold' || start?.verdict !== 'enough' || contacts === 'not read')
    return undefined
  return contacts === 'open' ? 'seen' : 'ruled out'
}

function higher({ comparison }: CaseReading): SeenOrNot {
  if (comparison?.higherThanExpected === undefined) return undefined
  return comparison.higherThanExpected ? 'seen' : 'ruled out'
}

/** High fire alone is too low: vent, exchanger or fan at its limit. One switch may answer for either stage. */
function stages(readings: readonly CaseReading[]): SeenOrNot {
  const verdicts = (stage: CaseReading['reading']['stage']) =>
    readings
      .filter(({ reading }) => reading.stage === stage)
      .map(({ comparison }) => (comparison?.start ?? comparison?.run)?.verdict)
  const isFine = (said: readonly unknown[]) => said.includes('enough') && !said.includes('too low')
  if (isFine(verdicts('high fire'))) return 'ruled out'
  return isFine(verdicts('low fire')) && verdicts('high fire').includes('too low') ? 'seen' : undefined
}

/** What the readings of the furnace as it serves show: nothing changed, door on. */
export function inServiceFindings(readings: readonly CaseReading[]): Observations {
  const asItServes = readings.filter((one) => isAsInService(one) && temperatureOf(one) !== undefined)
  return {
    ...gravestOf('reading-at-start', asItServes.map(atStart), [
      'near zero, inducer running',
      'too low from the start',
      'beyond make and steady',
    ]),
    ...seenOnce('flutter-near-the-limit', asItServes.map(flutters)),
    ...gravestOf(
      'reading-when-hot',
      asItServes.map((one) => whenHot(one, asItServes)),
      ['sags through break', 'sags, settles above break', 'holds as cold'],
    ),
    ...seenOnce('open-beyond-make', asItServes.map(openBeyondMake)),
    ...seenOnce('higher-than-expected', asItServes.map(higher)),
    ...seenOnce('low-fire-fine-high-fire-too-low', [stages(asItServes)]),
  }
}
