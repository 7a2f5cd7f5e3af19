import { toPascals } from '@/lib/core/pressure'
import type { CaseTelling } from '../../cases/callTypes'
import type { CaseShowing } from '../../showing'
import { openToldCase } from './script'

/** Water where it should not be, and none where it should. */
export function tellWaterCases(telling: CaseTelling): CaseShowing[] {
  return [...dryTrap(telling), frostOnTheScreen(telling), twoEndings(telling), twoCausesAtOnce(telling)]
}

/** A swapped switch that fixed nothing, and the dry trap behind it. */
function dryTrap(telling: CaseTelling): CaseShowing[] {
  const first = openToldCase(telling, 'Bellfounder Street 30', {
    by: 'dunja',
    on: '2025-10-06',
    body: { complaint: 'First cold morning, no heat' },
  })
  const one = first.visit('tobin', '2025-10-06')
  one.see('switch-after-inducer-start', 'never closes, waits and times out')
  one.see('inducer-sound', 'normal')
  one.fitFactorySwitch('Switch replaced, had one on the van', 25)
  one.end({
    how: 'repaired, not proven',
    mainCause: 'switch-drifted-or-leaking',
    confirmingTest: 'not done',
    minutes: 40,
    note: 'Ran when I left.',
  })
  const again = openToldCase(telling, 'Bellfounder Street 30', {
    by: 'dunja',
    on: '2025-10-09',
    body: { complaint: 'Out again, three days after you were here' },
  })
  const { points } = again.stage('Single stage')
  const two = again.visit('sunniva', '2025-10-09', { weather: 'first real frost, −1 °C' })
  two.see('again-within-30-days', 'seen')
  two.see('first-start-of-season', 'seen')
  two.show('Single stage', [points.make - 16, points.make - 15, points.make - 16], 'pre-purge', {
    contacts: 'open',
    note: 'Open, and right to be open. The old switch would have said the same.',
  })
  two.see('gurgle-or-sucking-at-drain', 'seen', 'Sucks air like a straw.')
  two.see('trap', 'dry', 'Stood idle since April.')
  two.show('Single stage', [points.make + 27, points.make + 27], 'pre-purge', {
    situation: 'after draining',
    contacts: 'closed',
    note: 'One cup of water into the trap.',
  })
  two.repair(
    { done: 'Trap primed, clip of its hose renewed', switchReplaced: false, parts: 'hose clip', minutes: 15 },
    [8, 15],
  )
  two.endProven({
    mainCause: 'trap-dry',
    minutes: 60,
    note: 'The switch of Monday was sound. Its cost is ours.',
  })
  return [
    {
      shows: 'a switch swapped without a reading',
      caseId: first.caseId,
      standing: 'repaired, not proven',
    },
    {
      shows: 'the dry trap behind it, three days later',
      caseId: again.caseId,
      standing: 'repaired and proven',
      observed: { 'reading-at-start': 'too low from the start', 'recovers-after-draining': 'seen' },
    },
  ]
}

/** A finding that was tapped on the wrong case, and taken back. */
function frostOnTheScreen(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Ferry Steps 4', {
    by: 'piet',
    on: '2026-01-30',
    body: { complaint: 'Third winter: goes out when it is really cold' },
  })
  const low = told.stage('Low fire')
  const visit = told.visit('ott', '2026-01-30', { weather: 'clear and bitter, −9 °C' })
  const slip = visit.see('vent-end', 'blocked')
  visit.say('withdrawal', { record: slip, reason: 'That was the house next door. Ours is clear.' }, [1, 2])
  visit.see('vent-end', 'clear')
  visit.see('plume-drawn-into-intake', 'seen', 'Blows straight across, you can watch it.')
  visit.see('intake', 'frosted over')
  visit.see('same-month-last-year', 'seen')
  visit.show('Low fire', [low.points.make + 41, low.points.make + 36, low.points.make + 44], 'pre-purge', {
    movement: 'without a pattern',
    contacts: 'closed',
  })
  visit.repair(
    {
      done: 'Hood on the vent end, turned away and raised, as the sheet shows',
      switchReplaced: false,
      parts: 'hood',
      minutes: 75,
    },
    [50, 75],
  )
  visit.endProven({
    mainCause: 'exhaust-into-intake',
    contributingCause: 'intake-blocked',
    minutes: 120,
    note: 'Should have done that two winters ago instead of brushing frost.',
  })
  return {
    shows: 'a finding tapped on the wrong case, and taken back',
    caseId: told.caseId,
    standing: 'repaired and proven',
    observed: { 'vent-end': 'clear' },
  }
}

/** Two people end one visit, and do not agree. */
function twoEndings(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Weighhouse, ground floor', {
    by: 'dunja',
    on: '2026-03-10',
    body: { complaint: 'Clicks and starts over' },
  })
  const { points } = told.stage('Single stage')
  const visit = told.visit('tobin', '2026-03-10', { note: 'Sunniva along for the ride.' })
  visit.see('switch-chatter', 'seen')
  visit.see('switch-wiring', 'loose or chafed')
  visit.show('Single stage', [points.make + 22], 'pre-purge', { contacts: 'closed' })
  visit.repair(
    { done: 'Push-on terminal replaced, harness tied back', switchReplaced: false, minutes: 20 },
    [12, 20],
  )
  visit.show('Single stage', [points.make + 20], 'steady hot', { when: 'after repair', contacts: 'closed' })
  const ended = visit.end({
    how: 'repaired and proven',
    mainCause: 'connection-bad',
    confirmingTest: 'confirmed',
    thermostatCycles: 2,
    minutes: 45,
  })
  const { caseId, visitId } = visit
  telling.team.say({
    kind: 'ending',
    by: 'sunniva',
    on: '2026-03-10',
    with: ended,
    body: {
      caseId,
      visitId,
      how: 'repaired, not proven',
      mainCause: 'connection-bad',
      confirmingTest: 'confirmed',
      minutes: 45,
      note: 'Two cycles, no CO. I would not call that proven. Tobin says he did. We look at it together tomorrow.',
    },
  })
  return {
    shows: 'two people end one visit and do not agree',
    caseId: told.caseId,
    standing: 'endings disagree',
  }
}

/** A plugged trap, and the water that it pushed into the hose. */
function twoCausesAtOnce(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Larch Hut Lane 14', {
    by: 'lale',
    on: '2025-02-26',
    body: { complaint: 'Heats for a while, then goes out' },
  })
  const { points } = told.stage('Single stage')
  const visit = told.visit('lale', '2025-02-26', { weather: 'snow, still falling, −8 °C' })
  visit.see('drops-out', 'after 5 to 20 minutes')
  visit.show('Single stage', [points.make + 9, points.make + 6], 'pre-purge', { contacts: 'closed' })
  visit.show('Single stage', [points.break + 2, points.break - 6], 'steady hot', { contacts: 'open' })
  const rest = [4].map((value) => toPascals(value / 100, 'inH2O'))
  visit.show('Single stage', [4], 'rest', {
    samples: rest,
    contacts: 'open',
    note: 'Does not go back to zero.',
  })
  visit.see('trap', 'sludge in it')
  visit.see('water-in-hose', 'seen', 'Thumb’s length of it.')
  visit.repair({ done: 'Trap out, flushed, filled again', switchReplaced: false, minutes: 35 }, [25, 35])
  visit.repair({ done: 'Hose drained and laid with fall', switchReplaced: false, minutes: 8 }, [5, 8])
  visit.show('Single stage', [points.make + 24, points.make + 23], 'steady hot', {
    when: 'after repair',
    contacts: 'closed',
  })
  visit.end({
    how: 'repaired, not proven',
    mainCause: 'trap-plugged',
    contributingCause: 'water-in-hose-or-switch',
    confirmingTest: 'confirmed',
    minutes: 75,
    note: 'No rating on file for this height yet, so there is nothing to prove it against.',
  })
  return {
    shows: 'a plugged trap, and the water that it pushed into the hose',
    caseId: told.caseId,
    standing: 'repaired, not proven',
    observed: { 'no-return-to-zero': 'seen' },
  }
}
