import type { DangerCode } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { isLeftOff } from '../case/leftOff'
import { replacementsAt } from '../case/switchParts'
import { oldestFirst } from '../ofFurnace'
import { dangerCodesOf, dangerCodesOfNumber, goneSince } from '../unsuitable'

/** Something that sits in a furnace and should not, as far as anybody has recorded. */
export type UnsuitableFitted = {
  /** The record that says so. */
  id: string
  /** Since when it is on record, ISO 8601. */
  at: string
  /** Left out where only a model number was recorded: nobody can be sent there by this record. */
  furnace?: Entry<FurnaceBody>
  model?: string
  positionId?: string
  what: FoundFittedBody['what'] | 'part number of a general-purpose switch'
  /** Letter for letter. */
  printed: string
  fittedBy?: string
  dangers: readonly DangerCode[]
  leftOff: boolean
}

/**
 * Every switch that was found fitted although it should not be, and every part number read off a switch that is a
 * general-purpose one's, as long as nothing on record has put it right: those whose furnace may still be running
 * first, then the oldest.
 */
export function unsuitableStill(file: TeamFile): UnsuitableFitted[] {
  const found = counting(file.foundFitted)
    .filter((entry) => goneSince(file, entry) === undefined)
    .map((entry): UnsuitableFitted => {
      const { furnaceId, model, positionId, what, printed, fittedBy } = entry.body
      return {
        ...whereabouts(file, entry, furnaceId),
        ...(positionId === undefined ? {} : { positionId: file.keptId(positionId) }),
        ...(model === undefined ? {} : { model }),
        what,
        printed,
        fittedBy,
        dangers: dangerCodesOf(file, entry.body),
      }
    })
  const isTold = (read: UnsuitableFitted): boolean =>
    found.some(
      ({ furnace, positionId = read.positionId }) =>
        furnace?.id === read.furnace?.id && positionId === read.positionId,
    )
  return [...found, ...numbersRead(file).filter((read) => !isTold(read))].toSorted(
    (one, other) => Number(one.leftOff) - Number(other.leftOff) || byMoment(one, other),
  )
}

const byMoment = (one: UnsuitableFitted, other: UnsuitableFitted): number =>
  one.at < other.at ? -1 : one.at > other.at ? 1 : one.id < other.id ? -1 : 1

function whereabouts(file: TeamFile, { id, at }: Entry<unknown>, furnaceId: string | undefined) {
  const furnace = furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(furnaceId))
  return {
    id,
    at,
    ...(furnace === undefined ? {} : { furnace }),
    leftOff: furnace !== undefined && isLeftOff(file, furnace.id),
  }
}

/** The newest number read off the switch of each position, where it is a general-purpose one's and still sits there. */
function numbersRead(file: TeamFile): UnsuitableFitted[] {
  const newest = new Map(
    counting(file.fittedParts)
      .sort(oldestFirst)
      .map((entry) => [`${file.keptId(entry.body.furnaceId)} ${file.keptId(entry.body.positionId)}`, entry]),
  )
  return [...newest.values()].flatMap((entry) => {
    const { furnaceId, positionId, printed } = entry.body
    const dangers = dangerCodesOfNumber(file, printed)
    const isReplaced = replacementsAt(file, furnaceId, positionId).some(({ at }) => at > entry.at)
    return dangers.length === 0 || isReplaced
      ? []
      : [
          {
            ...whereabouts(file, entry, furnaceId),
            positionId: file.keptId(positionId),
            what: 'part number of a general-purpose switch' as const,
            printed,
            dangers,
          },
        ]
  })
}
