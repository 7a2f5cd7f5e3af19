import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PartBody } from '@/lib/records/kinds/part'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { Option } from '../ui/form/option'

/** How near a part is to a switch: listed for it, of its maker, of another. */
type Nearness = 0 | 1 | 2

const nearWords = ['listed for this switch', 'listed for another switch', 'another maker’s'] as const

/**
 * What to look at again before a number read off a part is saved: the part is recorded as one of other switches, and not
 * of this one.
 */
export function listedElsewhere(
  file: TeamFile,
  position: Entry<PositionBody>,
  part: PartBody | undefined,
): string | undefined {
  const listed = [...new Set(part?.positionIds.map(file.keptId))]
  if (part === undefined || listed.length === 0 || listed.includes(position.id)) return undefined
  const names = listed.flatMap((id) => {
    const other = file.positions.get(id)
    const range = other && file.ranges.get(file.keptId(other.body.rangeId))
    return other === undefined
      ? []
      : [`${other.body.name}${range === undefined ? '' : `, ${range.body.name}`}`]
  })
  return `Look again: ${part.partNumber} is on file for ${names.join('; ')}, and not for this switch. Is that the number on it? Then record first that the maker lists it here.`
}

/**
 * The parts whose label can be read at a switch, those that are listed for it first. None is left out: whatever is in
 * must be nameable, and a part that is no factory part here says so.
 */
export function partsFor(file: TeamFile, position: Entry<PositionBody>, makerId: string): Option[] {
  const nearnessOf = ({ positionIds, makerId: own }: PartBody): Nearness =>
    positionIds.some((id) => file.keptId(id) === position.id)
      ? 0
      : own !== undefined && file.keptId(own) === file.keptId(makerId)
        ? 1
        : 2
  return counting(file.parts)
    .map((part) => ({ part, near: nearnessOf(part.body) }))
    .toSorted(
      (one, other) =>
        one.near - other.near ||
        one.part.body.partNumber.localeCompare(other.part.body.partNumber, 'en', { numeric: true }),
    )
    .map(({ part: { id, body }, near }) => ({
      value: id,
      words: `${body.partNumber} (${body.class === 'factory' ? `factory part, ${nearWords[near]}` : body.class})`,
    }))
}
