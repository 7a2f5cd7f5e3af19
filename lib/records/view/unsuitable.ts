import { type DangerCode, dangerOfFitted } from '@/lib/core/guard'
import { plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { FoundFittedBody } from '../kinds/foundFitted'
import type { AnyRepairBody } from '../kinds/repair'
import { ofFurnace } from './ofFurnace'

const dangerOfWhat: Readonly<Record<FoundFittedBody['what'], DangerCode | undefined>> = {
  'adjustable or general-purpose switch': 'general-purpose-switch-fitted',
  'switch for another stage': undefined,
  'switch for another elevation': 'wrong-elevation-switch-fitted',
  'jumper or bypass': 'jumper-or-bypass',
  'not known': undefined,
}

/** The dangers of what was found: by what it was called, and by what the part on file is. */
export function dangerCodesOf(file: TeamFile, found: FoundFittedBody): DangerCode[] {
  const part = found.partId === undefined ? undefined : file.parts.get(file.keptId(found.partId))
  const ofPart =
    part === undefined
      ? []
      : dangerOfFitted({ partClass: part.body.class, adjustable: part.body.fieldAdjustable })
  const ofWhat = dangerOfWhat[found.what]
  return [...new Set([...(ofWhat === undefined ? [] : [ofWhat]), ...ofPart])]
}

/** The dangers of a part number: those of every part on file that bears it, however it was typed. */
export function dangerCodesOfNumber(file: TeamFile, partNumber: string): DangerCode[] {
  const plain = plainPartNumber(partNumber)
  const codes = counting(file.parts)
    .filter(({ body }) => plainPartNumber(body.partNumber) === plain)
    .flatMap(({ body }) => dangerOfFitted({ partClass: body.class, adjustable: body.fieldAdjustable }))
  return [...new Set(codes)]
}

/**
 * The repair that put right what was found: at the same furnace and position, recorded after the finding, and with a
 * factory part that is listed for that position. A jumper is taken out, which needs no part. Undefined while none is
 * on record. It proves nothing by itself: readings taken afterwards do.
 */
export function putRightBy(
  file: TeamFile,
  { body, at }: Entry<FoundFittedBody>,
): Entry<AnyRepairBody> | undefined {
  const { furnaceId, positionId, foundOn, what } = body
  if (furnaceId === undefined || positionId === undefined) return undefined
  const position = file.keptId(positionId)
  const isRightPart = (partId: string | undefined): boolean => {
    if (partId === undefined) return what === 'jumper or bypass'
    const part = file.parts.get(file.keptId(partId))?.body
    return part?.class === 'factory' && part.positionIds.some((id) => file.keptId(id) === position)
  }
  return ofFurnace(file, file.repairs, furnaceId).find(
    ({ body: repair, at: recordedAt }) =>
      repair.positionId !== undefined &&
      file.keptId(repair.positionId) === position &&
      isRightPart(repair.fittedPart) &&
      (repair.on > foundOn || (repair.on === foundOn && recordedAt > at)),
  )
}

/** Switches found in a furnace although they should not be, and not yet put right, oldest first. */
export function unsuitableIn(file: TeamFile, furnaceId: string): Entry<FoundFittedBody>[] {
  return ofFurnace(file, file.foundFitted, furnaceId).filter((found) => putRightBy(file, found) === undefined)
}
