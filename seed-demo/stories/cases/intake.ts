import { toPascals } from '@/lib/core/pressure'
import type { CaseTelling } from '../../cases/callTypes'
import { houseAt } from '../../cases/houses'
import { asFoundCold } from '../../cases/pressure'
import { readingBody } from '../../cases/visit'
import type { CaseShowing } from '../../showing'
import { inches } from '../../writing'
import { openToldCase } from './script'

/** A plugged intake whose high reading was passed at first. */
export function tellIntakeCases(telling: CaseTelling): CaseShowing[] {
  const { team } = telling
  serviceBeforeChristmas(telling)
  const first = openToldCase(telling, 'Tollgate 6', {
    by: 'dunja',
    on: '2025-01-14',
    body: { complaint: 'Rumbles when it starts, stops now and then' },
  })
  const low = first.stage('Low fire')
  const one = first.visit('tobin', '2025-01-14')
  one.see('locked-out-on-arrival', 'ruled out')
  one.see('rumble-or-late-light-off', 'seen')
  one.show('Low fire', [low.points.make + 52], 'pre-purge', {
    contacts: 'closed',
    note: 'Half an inch to spare. Nothing wrong with the draft.',
  })
  one.end({
    how: 'no fault found',
    followUpOn: '2025-01-28',
    minutes: 25,
    note: 'Ran while I was there. Plenty of suction.',
  })

  const again = openToldCase(telling, 'Tollgate 6', {
    by: 'dunja',
    on: '2025-01-17',
    body: { complaint: 'Same again: bangs at the start, then nothing' },
  })
  const two = again.visit('sunniva', '2025-01-17', { weather: 'thaw, everything drips, 4 °C' })
  two.see('again-within-30-days', 'seen')
  two.see('rumble-or-late-light-off', 'seen')
  const reading = two.show('Low fire', [low.points.make + 54, low.points.make + 53], 'pre-purge', {
    contacts: 'closed',
    note: 'It was 0.24 over the make point at the service before Christmas. Too good is not good.',
  })
  two.show('Low fire', [low.points.make + 25, low.points.make + 24], 'pre-purge', {
    situation: 'intake off',
    contacts: 'closed',
  })
  two.see(
    'intake',
    'screen or end matted',
    'Seed fluff from the poplars, wet and grey like felt. Behind the bend, not to be seen from outside.',
  )
  two.see('flue-co-normal-and-steady', 'ruled out')
  two.repair(
    { done: 'Intake cleared, screen that nobody names taken out', switchReplaced: false, minutes: 25 },
    [15, 25],
  )
  two.endProven({
    mainCause: 'intake-blocked',
    minutes: 70,
    note: 'A high reading is a finding. Held against the make point alone it looks like a present.',
  })
  const body = {
    furnaceId: again.house.furnaceId,
    readingId: reading,
    occasion: 'annual service',
    on: '2025-01-17',
  }
  const wrong = team.say({ kind: 'baseline', by: 'sunniva', on: '2025-01-17', pause: [1, 2], body })
  team.say({
    kind: 'withdrawal',
    by: 'sunniva',
    on: '2025-01-17',
    pause: [1, 2],
    body: {
      record: wrong,
      reason: 'Tapped the wrong reading: that one is from before the intake was cleared.',
    },
  })
  return [
    {
      shows: 'a high reading that was passed as good margin: its ending is not taken for finished',
      caseId: first.caseId,
      standing: 'not finished',
      observed: { 'higher-than-expected': 'seen' },
    },
    {
      shows: 'the plugged intake behind it, three days later',
      caseId: again.caseId,
      standing: 'repaired and proven',
      observed: { 'higher-than-expected': 'seen', 'recovers-with-intake-off': 'seen' },
    },
  ]
}

/** What Tollgate 6 shows when it is healthy: read at the service of that winter. */
function serviceBeforeChristmas({ team, random, ratings }: CaseTelling): void {
  const [by, on] = ['sunniva', '2024-12-11'] as const
  const house = houseAt(team, random, 'Tollgate 6')
  const stage = house.stages[0]!
  const read = { ...asFoundCold, stage, faults: [], phase: 'pre-purge', when: 'as found' } as const
  const shown = [stage.points.make + 24, stage.points.make + 24]
  const body = {
    ...readingBody({ team, random, ratings, house, by, on }, read),
    samples: shown.map((value) => toPascals(value / 100, 'inH2O')),
    asTyped: `${shown.map(inches).join(', ')} in. w.c.`,
  }
  const readingId = team.say({ kind: 'reading', by, on, body })
  const { furnaceId } = house
  team.say({ kind: 'baseline', by, on, body: { furnaceId, readingId, occasion: 'annual service', on } })
}
