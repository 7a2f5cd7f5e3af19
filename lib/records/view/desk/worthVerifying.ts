import { type Ranked, worthVerifyingNext } from '@/lib/core/callbacks/worthVerifyingNext'
import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { PositionBody } from '../../kinds/position'
import { leastSure } from '../leastSure'
import { openQuestions } from './questions'

/** A switch whose rating is worth a call, how often it is looked up, how many furnaces depend on it, how many wait. */
export type WorthVerifying = Ranked & {
  position: Entry<PositionBody>
  action: 'closes' | 'opens'
  furnaces: number
  asked: number
  /** How often the team looked it up lately, once a device and day. */
  lookedUp: number
}

/**
 * The ratings that a quiet hour is best spent on: how often a number is used × how unsure it is. A look-up, a furnace
 * that the team has worked on and an open question are a use each (common practice, no published source). The number
 * is the one that proves the draft: where the switch closes, or, for one that opens on rise, where it opens.
 *
 * @param timesByPosition how often positions were looked up lately; those of joined positions are added up
 */
export function worthVerifying(
  file: TeamFile,
  settings: RatingSettings,
  timesByPosition: ReadonlyMap<string, number> = new Map(),
): WorthVerifying[] {
  const lookedUp = new Map<string, number>()
  for (const [id, times] of timesByPosition)
    lookedUp.set(file.keptId(id), (lookedUp.get(file.keptId(id)) ?? 0) + times)
  const serviced = servicedFurnaces(file)
  const open = openQuestions(file)
  const uses = counting(file.positions)
    .filter(({ body }) => body.kind !== 'gas pressure' && body.kind !== 'sensor')
    .map((position) => ({
      position,
      action: position.body.kind === 'opens on rise' ? ('opens' as const) : ('closes' as const),
      furnaces: serviced.get(file.keptId(position.body.rangeId)) ?? 0,
      asked: open.filter((question) => question.position?.id === position.id).length,
      lookedUp: lookedUp.get(position.id) ?? 0,
    }))
    .filter((use) => timesUsed(use) > 0)
  const ranked = worthVerifyingNext(
    uses.map(({ position }) => {
      const { level, probability } = leastSure(file, position, settings)
      return { key: position.id, level, probability }
    }),
    uses.map((use) => ({ key: use.position.id, times: timesUsed(use) })),
  )
  const useOf = new Map(uses.map((use) => [use.position.id, use]))
  return ranked.map((each) => ({ ...each, ...useOf.get(each.key)! }))
}

const timesUsed = ({ furnaces, asked, lookedUp }: Omit<WorthVerifying, keyof Ranked>): number =>
  furnaces + asked + lookedUp

/** How many furnaces of each range a case, a repair or a baseline tells of. */
function servicedFurnaces(file: TeamFile): Map<string, number> {
  const worked = new Set(
    [...counting(file.cases), ...counting(file.repairs), ...counting(file.baselines)].map(({ body }) =>
      file.keptId(body.furnaceId),
    ),
  )
  const byRange = new Map<string, number>()
  for (const id of worked) {
    const rangeId = file.furnaces.get(id)?.body.rangeId
    if (rangeId === undefined) continue
    const range = file.keptId(rangeId)
    byRange.set(range, (byRange.get(range) ?? 0) + 1)
  }
  return byRange
}
