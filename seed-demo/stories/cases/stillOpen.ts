import type { CaseTelling } from '../../cases/callTypes'
import type { CaseShowing } from '../../showing'
import { openToldCase } from './script'

/** What is not over at the demo's end: left off, waiting for a part, and being worked on. */
export function tellOpenCases(telling: CaseTelling): CaseShowing[] {
  return [crackedAndOff(telling), wheelOnOrder(telling), begunToday(telling)]
}

/** A step as the blower starts: the exchanger. The furnace stays off. */
function crackedAndOff(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Saltpan Lane 9', {
    by: 'piet',
    on: '2026-11-10',
    body: { complaint: 'Goes out as soon as the air comes' },
  })
  const { points } = told.stage('Single stage')
  const { house, caseId, visitId, ...visit } = told.visit('ott', '2026-11-10', {
    weather: 'first real frost, −2 °C',
  })
  visit.see('drops-when-air-blower-starts', 'seen')
  visit.show('Single stage', [points.make + 24, points.make + 25], 'pre-purge', { contacts: 'closed' })
  visit.show('Single stage', [points.make + 20, points.make + 20], 'after light-off', { contacts: 'closed' })
  visit.show('Single stage', [points.make - 2, points.make - 8], 'after light-off', {
    situation: 'air blower just started',
    contacts: 'closed',
    note: 'Down a quarter of an inch in the second it starts.',
  })
  visit.see('flame-moves-at-blower-start', 'seen')
  visit.see('cracked-heat-exchanger', 'seen', 'Camera: hand-long crack, second cell from the left.')
  const done = ['gas off', 'power off', 'tagged', 'occupant told', 'whoever local rules name told']
  visit.say('danger answer', { caseId, visitId, dangers: ['cracked-heat-exchanger'], done }, [1, 2])
  const noticeId = visit.say(
    'shut-down notice',
    {
      furnaceId: house.furnaceId,
      caseId,
      on: '2026-11-10',
      found: 'The heat exchanger is cracked: combustion products can get into the air of the house.',
      doNotRelightUntil: 'exchanger or furnace is replaced',
      gas: 'off',
      power: 'off',
      tagged: true,
      told: 'owner, in person; she signed',
      toldAt: '2026-11-10T17:40:00.000Z',
      writtenNotice: true,
      authority: 'told',
      authorityWho: 'Quarl valley gas supplier, on duty that day',
      heatAndFrost: 'Heaters in two rooms, upstairs lines drained',
    },
    [5, 9],
  )
  visit.end({
    how: 'left off',
    mainCause: 'primary-exchanger-cracked',
    confirmingTest: 'confirmed',
    noticeId,
    minutes: 95,
  })
  return {
    shows: 'a step as the blower starts: a cracked exchanger, and a furnace that stays off',
    caseId: told.caseId,
    standing: 'left off',
    observed: { 'step-at-blower-start': 'seen' },
  }
}

/** The wheel is on order. */
function wheelOnOrder(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Bakehouse, Kiln Street', {
    by: 'piet',
    on: '2026-11-16',
    body: { complaint: 'Scrapes, and no heat in the shop' },
  })
  const { points } = told.stage('Single stage')
  const visit = told.visit('ott', '2026-11-16')
  visit.see('inducer-sound', 'scrape or rattle at the wheel')
  visit.show('Single stage', [points.make - 14, points.make - 12], 'pre-purge', { contacts: 'open' })
  visit.see('inducer-wheel', 'loose, cracked or corroded', 'Hub turns on the shaft.')
  visit.see('vent-end', 'clear')
  visit.end({
    how: 'waiting for part',
    mainCause: 'inducer-wheel',
    confirmingTest: 'confirmed',
    partNumber: 'SM 862/31',
    supersessionChecked: true,
    orderedWhere: 'Quarlfoot Furnace Supply, counter',
    minutes: 55,
    note: 'Oven keeps the shop warm enough. Wheel comes on Tuesday.',
  })
  return {
    shows: 'a part on order',
    caseId: told.caseId,
    standing: 'waiting for part',
  }
}

/** Somebody stands in the cellar right now. */
function begunToday(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Larch Hut Lane 14, new furnace', {
    by: 'dunja',
    on: '2026-11-19',
    body: {
      complaint: 'New furnace, six weeks old: tries three times, then nothing',
      serialSeen: 'R2606-0421',
      note: 'Serial as she read it to me over the phone. Ours says 0412.',
    },
  })
  const { points } = told.stage('Single stage')
  const visit = told.visit('lale', '2026-11-19', { weather: 'snow, still falling, −7 °C' })
  visit.see('inducer-on-call', 'starts')
  visit.see('switch-after-inducer-start', 'never closes, waits and times out')
  visit.see('after-snowfall-or-drift', 'seen')
  visit.see('intake', 'clear end to end')
  visit.show('Single stage', [points.make - 31, points.make - 30], 'pre-purge', { contacts: 'open' })
  return {
    shows: 'a visit that is going on',
    caseId: told.caseId,
    standing: 'being worked on',
    observed: { 'reading-at-start': 'too low from the start' },
  }
}
