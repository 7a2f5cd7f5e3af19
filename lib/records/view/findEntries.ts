import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PartBody } from '../kinds/part'
import { groupedOnce } from './grouped'

/** Something that Find can list: its key for the index, and the texts by which people look for it. */
export type FindEntry = {
  key: string
  target: { kind: 'position'; id: string } | { kind: 'furnace'; id: string } | { kind: 'part'; id: string }
  texts: string[]
}

/**
 * Everything that can be looked for: each switch position by its part numbers (superseded ones too), models,
 * range, maker and name; each furnace by site label, model and serial; and parts that belong to no position,
 * so that a general-purpose switch is known for what it is.
 */
export function findEntries(file: TeamFile): FindEntry[] {
  const partsAt = partsByPosition(file)
  const positions = counting(file.positions).flatMap((position): FindEntry[] => {
    const range = file.ranges.get(file.keptId(position.body.rangeId))
    const maker = range && file.makers.get(file.keptId(range.body.makerId))
    if (range === undefined || range.withdrawn !== undefined) return []
    const parts = (partsAt.get(position.id) ?? []).map((part) => part.body.partNumber)
    return [
      {
        key: `position ${position.id}`,
        target: { kind: 'position', id: position.id },
        texts: [
          ...parts,
          ...range.body.modelPatterns.map(asFound),
          range.body.name,
          maker?.body.name ?? '',
          position.body.name,
        ].filter((text) => text !== ''),
      },
    ]
  })
  const furnaces = counting(file.furnaces).map(
    (furnace): FindEntry => ({
      key: `furnace ${furnace.id}`,
      target: { kind: 'furnace', id: furnace.id },
      texts: [
        furnace.body.siteLabel,
        furnace.body.model,
        furnace.body.serial ?? '',
        furnace.body.branch ?? '',
      ].filter((text) => text !== ''),
    }),
  )
  const looseParts = counting(file.parts)
    .filter((part) => part.body.positionIds.length === 0)
    .map(
      (part): FindEntry => ({
        key: `part ${part.id}`,
        target: { kind: 'part', id: part.id },
        texts: [part.body.partNumber],
      }),
    )
  return [...positions, ...furnaces, ...looseParts]
}

/** The index knows one wildcard, for any characters; a pattern that is found a little too widely is still found. */
const asFound = (pattern: string): string => pattern.replaceAll('?', '*')

/** The parts listed for each position, joined records followed. */
export const partsByPosition = (file: TeamFile): ReadonlyMap<string, readonly Entry<PartBody>[]> =>
  byPosition(file, file.parts)

const byPosition = groupedOnce<PartBody>(({ positionIds }) => positionIds)
