import { unitLabel } from '@/lib/core/pressure'
import type { Reading } from '@/lib/core/reading'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { limitsNow } from '@/lib/records/view/case/limitsNow'
import type { Setpoint } from '@/lib/records/view/setpoint'
import type { ReadingForm } from '../compare/readingForm'

/** What is said of a reading beside its numbers. */
export type ReadingOccasion = Pick<
  ReadingBody,
  'furnaceId' | 'caseId' | 'visitId' | 'situation' | 'when' | 'movement' | 'byTeeAtTheSwitch'
>

/** A reading as it is recorded: the numbers, what was typed, and the limits as they stand at this moment. */
export function readingBodyOf(
  form: ReadingForm,
  reading: Reading,
  setpoint: Setpoint,
  occasion: ReadingOccasion,
): Record<string, unknown> {
  const { starts, typed, lowest, highest, unit } = form
  const withUnit = (text: string) =>
    /[a-z"]/i.test(text) ? text.trim() : `${text.trim()} ${unitLabel[unit]}`
  const parts = [
    ...[...starts.map(({ text }) => text), typed].filter((text) => text.trim() !== '').map(withUnit),
    ...(lowest.trim() === '' ? [] : [`lowest ${withUnit(lowest)}`]),
    ...(highest.trim() === '' ? [] : [`highest ${withUnit(highest)}`]),
  ]
  const against = limitsNow(setpoint.rating)
  return {
    ...occasion,
    ...reading,
    positionId: setpoint.position.id,
    zeroed: form.zeroed,
    gaugeId: form.gaugeId,
    asTyped: parts.join(', '),
    ...(against.length === 0 ? {} : { against }),
  }
}
