import { makeTagCode } from '@/lib/core/tag'
import type { Team } from '../team'

/** The first two tags of a printed sheet, stuck on at the autumn services; one was put on the wrong furnace first. */
export function tellTags(team: Team): void {
  const stick = (code: string, siteLabel: string, on: string) =>
    team.say({ kind: 'tag', by: 'sunniva', on, body: { code, furnaceId: team.furnaceId(siteLabel) } })
  const first = makeTagCode([7, 22, 3, 18, 0, 11, 26, 5, 14, 9, 2])
  const second = makeTagCode([15, 1, 27, 8, 20, 4, 12, 24, 6, 17, 10])
  stick(first, 'Goatherd Lane 1', '2026-10-06')
  const wrong = stick(second, 'Pass Inn, kitchen side', '2026-10-07')
  team.say({
    kind: 'withdrawal',
    by: 'sunniva',
    on: '2026-10-07',
    body: {
      record: wrong,
      reason: 'Two furnaces side by side in that cellar, and I stood at the other one.',
    },
  })
  stick(second, 'Lift house, upper room', '2026-10-08')
}
