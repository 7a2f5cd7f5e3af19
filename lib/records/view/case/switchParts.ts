import type { CaseState, PartNumber, Supersession } from '@/lib/core/guard'
import { plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PartBody } from '@/lib/records/kinds/part'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import { ofFurnace } from '../ofFurnace'
import type { PartLink } from '../partChain'
import type { Setpoint } from '../setpoint'
import type { CaseFile } from './caseFile'

/** The repairs that put a new switch into a position of a furnace, on whatever case, oldest first. */
export const replacementsAt = (
  team: TeamFile,
  furnaceId: string,
  positionId: string,
): Entry<AnyRepairBody>[] =>
  ofFurnace(team, team.repairs, furnaceId).filter(
    ({ body }) =>
      body.fittedPart !== undefined &&
      body.positionId !== undefined &&
      team.keptId(body.positionId) === team.keptId(positionId),
  )

/** The part numbers that bear on replacing the switch of one position, as the guard takes them. */
export function switchPartsOf(team: TeamFile, { furnace, fittedParts }: CaseFile, setpoint: Setpoint) {
  const printed = printedOnFitted(team, furnace.id, fittedParts, setpoint.position.id)
  const line = lineOf(team, setpoint)
  const parts = (line ?? setpoint.partLines.flat()).map(({ part }) => part)
  const known = parts.find(({ body }) => isSameNumber(body.partNumber, printed))
  const fitted = known?.body.partNumber ?? printed
  const named = parts.filter(({ body }) => isNamedFor(team, body, setpoint.position.id))
  const factory = line === undefined ? undefined : (named.find((part) => part === known) ?? named[0])
  return {
    ...(fitted === undefined ? {} : { fitted }),
    ...(factory === undefined ? {} : { factory: asListed(factory.body) }),
    supersessions: factory === undefined ? [] : supersessionsAround(team, factory.id),
  } satisfies CaseState['part']
}

const isSameNumber = (one: PartNumber, other: PartNumber | undefined): boolean =>
  other !== undefined && plainPartNumber(one) === plainPartNumber(other)

/** What was read off the switch, or what was fitted since. */
function printedOnFitted(
  team: TeamFile,
  furnaceId: string,
  fittedParts: CaseFile['fittedParts'],
  positionId: string,
): PartNumber | undefined {
  const read = fittedParts.findLast(({ body }) => team.keptId(body.positionId) === positionId)
  const replaced = replacementsAt(team, furnaceId, positionId).at(-1)
  if (replaced === undefined || (read !== undefined && read.at >= replaced.at)) return read?.body.printed
  return team.parts.get(team.keptId(replaced.body.fittedPart!))?.body.partNumber
}

/**
 * The line of part numbers that is right here. Where the maker lists several for one position (by elevation, say),
 * it is the one that the sources of the rating name; undefined while none of them does.
 */
function lineOf(team: TeamFile, { partLines, rating, reports }: Setpoint): PartLink[] | undefined {
  if (partLines.length === 1) return partLines[0]
  const agreeing = [rating.closes, rating.opens, rating.unstated].flatMap(({ reportIds }) => reportIds)
  const numbers = agreeing.flatMap((id) => {
    const { partNumber, readOffPart } = reports.get(id)?.body ?? {}
    const readOff = readOffPart === undefined ? undefined : team.parts.get(team.keptId(readOffPart))
    return [partNumber, readOff?.body.partNumber].filter((number) => number !== undefined)
  })
  const named = partLines.filter((line) =>
    line.some(({ part }) => numbers.some((number) => isSameNumber(part.body.partNumber, number))),
  )
  return named.length === 1 ? named[0] : undefined
}

/** Whether a part is one that the maker names for a position: nothing adjustable or general-purpose ever is. */
const isNamedFor = (team: TeamFile, body: PartBody, positionId: string): boolean =>
  isFactory(body) && body.positionIds.some((id) => team.keptId(id) === positionId)

const isFactory = (body: PartBody): boolean => body.class === 'factory' && !body.fieldAdjustable

/** A part is on file as factory only with the maker who lists it and where, so the maker's word is behind it. */
const asListed = ({ partNumber, listedIn = '' }: PartBody) => ({
  partNumber,
  listedBy: 'current literature' as const,
  listedWhere: listedIn,
})

const settings = { same: 'as before', changed: 'changed', 'not stated': 'not stated' } as const

/** Every statement that one number replaces another, as far as it is linked with a part. */
function supersessionsAround(team: TeamFile, partId: string): Supersession[] {
  const all = counting(team.supersessions).map(({ body }) => ({
    from: team.keptId(body.oldPartId),
    to: team.keptId(body.newPartId),
    setting: settings[body.setting],
  }))
  const linked = new Set([partId])
  // The set grows while it is walked: parts found are looked from in their turn.
  for (const id of linked)
    for (const { from, to } of all) if (from === id || to === id) linked.add(from).add(to)
  const numberOf = (id: string): PartNumber => team.parts.get(id)?.body.partNumber ?? id
  return all
    .filter(({ from }) => linked.has(from))
    .map(({ from, to, setting }) => ({ from: numberOf(from), to: numberOf(to), setting }))
}

/** Whether a part number is a factory part's on file, and of no other part. What is not is never named as one to order. */
export const isFactoryNumber = (team: TeamFile, partNumber: PartNumber): boolean => {
  const parts = counting(team.parts).filter(({ body }) => body.partNumber === partNumber)
  return parts.length > 0 && parts.every(({ body }) => isFactory(body))
}
