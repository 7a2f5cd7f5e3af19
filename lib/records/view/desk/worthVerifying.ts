import { type Ranked, worthVerifyingNext } from '@/lib/core/callbacks/worthVerifyingNext'
import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { PositionBody } from '../../kinds/position'
import { leastSure } from '../leastSure'
import { openQuestions } from './questions'

/** A switch whose rating is worth a call, how many serviced furnaces depend on it, and how many wait for it. */
export type WorthVerifying = Ranked & {
  position: Entry<PositionBody>
  action: 'closes' | 'opens'
  furnaces: number
  asked: number
}

/**
 * The ratings that a quiet hour is best spent on: how many furnaces that the team has worked on, and open questions,
 * depend on a number × how unsure it is. Who looks things up stays on each device, so it is not counted. The number
 * is the one that proves the draft: where the switch closes, or, for one that opens on rise, where it opens.
 */
export function worthVerifying(file: TeamFile, settings: RatingSettings): WorthVerifying[] {
  const serviced = servicedFurnaces(file)
  const open = openQuestions(file)
  const uses = counting(file.positions)
    .filter(({ body }) => body.kind !== 'gas pressure' && body.kind !== 'sensor')
    .map((position) => ({
      position,
      action: position.body.kind === 'opens on rise' ? ('opens' as const) : ('closes' as const),
      furnaces: serviced.get(file.keptId(position.body.rangeId)) ?? 0,
      asked: open.filter((question) => question.position?.id === position.id).length,
    }))
    .filter(({ furnaces, asked }) => furnaces + asked > 0)
  const ranked = worthVerifyingNext(
    uses.map(({ position }) => {
      const { level, probability } = leastSure(file, position, settings)
      return { key: position.id, level, probability }
    }),
    uses.map(({ position, furnaces, asked }) => ({ key: position.id, times: furnaces + asked })),
  )
  const useOf = new Map(uses.map((use) => [use.position.id, use]))
  return ranked.map((each) => ({ ...each, ...useOf.get(each.key)! }))
}

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
