import { plainSpelling } from '@/lib/core/find'
import type { TeamFile } from '../../fold/teamFile'
import type { RatingRequestBody } from '../../kinds/ratingRequest'

/** What a rating request is about, as far as two of them are compared. */
export type Subject = Pick<RatingRequestBody, 'positionId' | 'furnaceId' | 'model' | 'positionName'>

/**
 * Whether two requests ask for the same rating: the same switch position; or, where no position is on file, a switch
 * of the same name on the same furnace or on one of the same model, letter for letter but for look-alikes. Anything
 * that is only near is another question.
 */
export function asksTheSame(file: TeamFile, one: Subject, other: Subject): boolean {
  if (one.positionId !== undefined || other.positionId !== undefined) {
    return (
      one.positionId !== undefined &&
      other.positionId !== undefined &&
      file.keptId(one.positionId) === file.keptId(other.positionId)
    )
  }
  if (plainSpelling(one.positionName ?? '') !== plainSpelling(other.positionName ?? '')) return false
  if (
    one.furnaceId !== undefined &&
    other.furnaceId !== undefined &&
    file.keptId(one.furnaceId) === file.keptId(other.furnaceId)
  )
    return true
  const model = modelOf(file, one)
  return model !== '' && model === modelOf(file, other)
}

const modelOf = (file: TeamFile, { model, furnaceId }: Subject): string => {
  const furnace = furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(furnaceId))
  return plainSpelling(model ?? furnace?.body.model ?? '')
}
