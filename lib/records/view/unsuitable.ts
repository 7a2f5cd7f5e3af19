import { type DangerCode, dangerOfFitted } from '@/lib/core/guard'
import { plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { FindingBody } from '../kinds/finding'
import type { FoundFittedBody } from '../kinds/foundFitted'
import type { AnyRepairBody } from '../kinds/repair'
import { neverFittedPart } from '../neverFitted'
import { furnacesNamed } from './furnacesNamed'
import { ofFurnace, oldestFirst } from './ofFurnace'

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

/**
 * The dangers of a part number: those of every part on file that bears it, however it was typed; where none does, what
 * its own words say it is.
 */
export function dangerCodesOfNumber(file: TeamFile, partNumber: string): DangerCode[] {
  const plain = plainPartNumber(partNumber)
  const parts = counting(file.parts).filter(({ body }) => plainPartNumber(body.partNumber) === plain)
  const said = parts.length === 0 ? neverFittedPart(partNumber) : undefined
  const ofWords = said === undefined ? undefined : dangerOfWhat[said]
  const ofParts = parts.flatMap(({ body }) =>
    dangerOfFitted({ partClass: body.class, adjustable: body.fieldAdjustable }),
  )
  return [...new Set([...(ofWords === undefined ? [] : [ofWords]), ...ofParts])]
}

/**
 * The repair that put right what was found: at the same furnace and position, recorded after the finding, and with a
 * factory part that is listed for that position. A jumper is taken out, which needs no part, but a repair that names
 * it. Undefined while none is on record. It proves nothing by itself: readings taken afterwards do.
 */
export function putRightBy(
  file: TeamFile,
  { id, body, at }: Entry<FoundFittedBody>,
): Entry<AnyRepairBody> | undefined {
  const { furnaceId, positionId, foundOn, what } = body
  if (furnaceId === undefined) return undefined
  const position = positionId === undefined ? undefined : file.keptId(positionId)
  const isRightPart = (repair: AnyRepairBody): boolean => {
    if (position === undefined || repair.positionId === undefined || repair.fittedPart === undefined)
      return false
    const part = file.parts.get(file.keptId(repair.fittedPart))?.body
    return (
      file.keptId(repair.positionId) === position &&
      part?.class === 'factory' &&
      part.positionIds.some((listed) => file.keptId(listed) === position)
    )
  }
  return ofFurnace(file, file.repairs, furnaceId).find(
    ({ body: repair, at: recordedAt }) =>
      ((what === 'jumper or bypass' && repair.putsRight === id) || isRightPart(repair)) &&
      (repair.on > foundOn || (repair.on === foundOn && recordedAt > at)),
  )
}

/**
 * Since when what was found is gone, ISO 8601: put right by a repair, or, a jumper, looked for again on that furnace
 * and ruled out. Undefined while it is there.
 */
export function goneSince(file: TeamFile, found: Entry<FoundFittedBody>): string | undefined {
  const repairedAt = putRightBy(file, found)?.at
  const { furnaceId, what } = found.body
  if (repairedAt !== undefined || furnaceId === undefined || what !== 'jumper or bypass') return repairedAt
  const newest = jumperLooks(file).get(file.keptId(furnaceId))
  return newest?.body.value === 'ruled out' && newest.at > found.at ? newest.at : undefined
}

const looks = new WeakMap<TeamFile, ReadonlyMap<string, Entry<FindingBody>>>()

/** The newest look for a jumper or a bypass on each furnace; gathered once for a whole team file. */
function jumperLooks(file: TeamFile): ReadonlyMap<string, Entry<FindingBody>> {
  const known = looks.get(file)
  if (known !== undefined) return known
  const newest = new Map<string, Entry<FindingBody>>()
  const all = counting(file.findings).filter(({ body }) => body.finding === 'jumper-or-bypass')
  for (const look of all.sort(oldestFirst))
    for (const furnaceId of furnacesNamed(file, look)) newest.set(furnaceId, look)
  looks.set(file, newest)
  return newest
}

/** Switches found in a furnace although they should not be, and not yet put right, oldest first. */
export function unsuitableIn(file: TeamFile, furnaceId: string): Entry<FoundFittedBody>[] {
  return ofFurnace(file, file.foundFitted, furnaceId).filter((found) => goneSince(file, found) === undefined)
}
