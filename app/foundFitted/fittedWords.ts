import { type DangerCode, dangerOfFitted, dangerSentence } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import type { RepairBody } from '@/lib/records/kinds/repair'

type What = FoundFittedBody['what']

/** What can be in although it should not be, in the order of the form, each with its line. */
export const whatWords: Readonly<Record<What, readonly [words: string, line: string]>> = {
  'adjustable or general-purpose switch': [
    'Adjustable or general-purpose switch',
    'Its setting can be changed, or no maker names it for this furnace.',
  ],
  'switch for another stage': ['Switch for another stage', 'A factory part, but of the other stage.'],
  'switch for another elevation': [
    'Switch for another elevation',
    'A factory part, but for another height above the sea.',
  ],
  'jumper or bypass': ['Jumper or bypass', 'Wire, tape, a prop, or a hose moved to defeat the switch.'],
  'not known': ['Not known yet', 'It does not look right, and nobody has said what it is.'],
}

const dangerOfWhat: Readonly<Record<What, DangerCode | undefined>> = {
  'adjustable or general-purpose switch': 'general-purpose-switch-fitted',
  'switch for another stage': undefined,
  'switch for another elevation': 'wrong-elevation-switch-fitted',
  'jumper or bypass': 'jumper-or-bypass',
  'not known': undefined,
}

const unproven = {
  'switch for another stage':
    'A switch for another stage is fitted: nobody has proven that it shows too little air.',
  'not known': 'Nobody has said what is fitted: nobody has proven that it shows too little air.',
} as const

/** Why what was found is a danger, in sentences: by what it was called, and by what the part on file is. */
export function fittedDangers(found: FoundFittedBody, file: TeamFile): string[] {
  const part = found.partId === undefined ? undefined : file.parts.get(file.keptId(found.partId))
  const ofPart =
    part === undefined
      ? []
      : dangerOfFitted({ partClass: part.body.class, adjustable: part.body.fieldAdjustable })
  const ofWhat = dangerOfWhat[found.what]
  const codes = [...new Set([...(ofWhat === undefined ? [] : [ofWhat]), ...ofPart])]
  return codes.length > 0
    ? codes.map((code) => dangerSentence[code])
    : [found.what === 'switch for another stage' ? unproven[found.what] : unproven['not known']]
}

export const notProvenSafe = 'The furnace is not proven safe until the factory part is back.'

/**
 * The repair that put right what was found: at the same furnace and position, recorded after the finding, and with a
 * factory part that is listed for that position. A jumper is taken out, which needs no part. Undefined while none is
 * on record. It proves nothing by itself: readings taken afterwards do.
 */
export function putRightBy(
  file: TeamFile,
  { body, at }: Entry<FoundFittedBody>,
): Entry<RepairBody> | undefined {
  const { furnaceId, positionId, foundOn, what } = body
  if (furnaceId === undefined || positionId === undefined) return undefined
  const position = file.keptId(positionId)
  const isRightPart = (partId: string | undefined): boolean => {
    if (partId === undefined) return what === 'jumper or bypass'
    const part = file.parts.get(file.keptId(partId))?.body
    return part?.class === 'factory' && part.positionIds.some((id) => file.keptId(id) === position)
  }
  return counting(file.repairs).find(
    ({ body: repair, at: recordedAt }) =>
      file.keptId(repair.furnaceId) === file.keptId(furnaceId) &&
      repair.positionId !== undefined &&
      file.keptId(repair.positionId) === position &&
      isRightPart(repair.fittedPart) &&
      (repair.on > foundOn || (repair.on === foundOn && recordedAt > at)),
  )
}
