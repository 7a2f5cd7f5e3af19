import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'
import type { MakerBody } from '@/lib/records/kinds/maker'
import type { PartBody } from '@/lib/records/kinds/part'
import type { PositionBody } from '@/lib/records/kinds/position'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { openPattern } from './modelPatterns'

/** A furnace range with its maker, its switch positions, and the parts listed for each. */
export type RangeBranch = {
  range: Entry<EquipmentRangeBody>
  maker: Entry<MakerBody> | undefined
  positions: { position: Entry<PositionBody>; parts: readonly Entry<PartBody>[] }[]
}

type Equipment = {
  branches: RangeBranch[]
  makersWithoutRange: Entry<MakerBody>[]
  /** Parts of no recorded position, general-purpose ones among them. */
  looseParts: Entry<PartBody>[]
}

/** The equipment of a team in the order of makers, ranges and positions, joined records followed. */
export function equipmentOf(file: TeamFile): Equipment {
  const parts = partsByPosition(file)
  const positions = counting(file.positions)
  const branches = counting(file.ranges)
    .map(
      (range): RangeBranch => ({
        range,
        maker: file.makers.get(file.keptId(range.body.makerId)),
        positions: positions
          .filter((position) => file.keptId(position.body.rangeId) === range.id)
          .map((position) => ({ position, parts: parts.get(position.id) ?? [] })),
      }),
    )
    .toSorted((one, other) => branchName(one).localeCompare(branchName(other), 'en'))
  const used = new Set(branches.map(({ maker }) => maker?.id))
  return {
    branches,
    makersWithoutRange: counting(file.makers).filter(({ id }) => !used.has(id)),
    looseParts: counting(file.parts).filter(({ body }) => body.positionIds.length === 0),
  }
}

export const branchName = ({ maker, range }: RangeBranch): string =>
  [maker?.body.name, range.body.name].filter(Boolean).join(' ')

/** The texts by which a range is found: models first, then names, then its switches and their part numbers. */
export const branchTexts = ({ maker, range, positions }: RangeBranch): string[] =>
  [
    ...range.body.modelPatterns.map(openPattern),
    range.body.name,
    maker?.body.name ?? '',
    ...positions.flatMap(({ position, parts }) => [
      position.body.name,
      ...parts.map((part) => part.body.partNumber),
    ]),
  ].filter((text) => text !== '')
