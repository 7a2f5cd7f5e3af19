import { failure, type Result, success } from '@/lib/core/result'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PartBody } from '@/lib/records/kinds/part'
import { neverFittedPart, neverFittedRefusal } from '@/lib/records/neverFitted'
import { namesOf, readsTheSame } from '../../equipment/form/readsTheSame'

/** The part on file whose number reads the same as what was typed; undefined when there is none. */
export function partOnFile(file: TeamFile, typed: string): Entry<PartBody> | undefined {
  if (typed.trim() === '') return undefined
  const parts = counting(file.parts)
  const [same] = readsTheSame(
    namesOf(parts.map(({ id, body }) => ({ id, text: body.partNumber }))),
    typed.trim(),
  )
  return parts.find(({ id }) => id === same)
}

/**
 * Whether a part may be waited for: an adjustable or general-purpose switch may not, because it may never be fitted.
 * A number that is not on file may be anything, a motor or a board, and is let by, unless its words say what it is.
 * @returns a problem with the code 'general-purpose' or 'bypass' otherwise
 */
export function factoryOnly(file: TeamFile, typed: string): Result<undefined> {
  const said = neverFittedPart(typed)
  if (said !== undefined)
    return failure(
      said === 'jumper or bypass' ? 'bypass' : 'general-purpose',
      neverFittedRefusal(said, 'The part number').sentence,
    )
  const part = partOnFile(file, typed)?.body
  return part?.class === 'general-purpose' || part?.fieldAdjustable === true
    ? failure(
        'general-purpose',
        `${part.partNumber} is an adjustable or general-purpose switch. Nobody has proven that it shows too little air in this furnace, so it is never ordered for one. Order the factory part that the maker names for this model and serial.`,
      )
    : success(undefined)
}
