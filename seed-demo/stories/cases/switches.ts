import { toPascals } from '@/lib/core/pressure'
import type { CaseTelling } from '../../cases/callTypes'
import type { CaseShowing } from '../../showing'
import { openToldCase } from './script'

/** The switch: one that was guilty after all, one that should never have been there, one that somebody bridged. */
export function tellSwitchCases(telling: CaseTelling): CaseShowing[] {
  return [guiltyAfterAll(telling), screwUnderACap(telling), wireAcrossIt(telling)]
}

/** Every look clear, the reading enough, the contact open, the pump off the furnace: then it is the switch. */
function guiltyAfterAll(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Heron Wharf 2, upstairs', {
    by: 'piet',
    on: '2025-11-25',
    body: { complaint: 'Tries three times, then nothing' },
  })
  const proving = told.stage('Proving')
  const { make } = proving.points
  const visit = told.visit('ott', '2025-11-25', { weather: 'dry, 3 °C' })
  const clear = {
    'jumper-or-bypass': 'ruled out',
    'inducer-on-call': 'starts',
    'inducer-sound': 'normal',
    'switch-after-inducer-start': 'never closes, waits and times out',
    'vent-end': 'clear',
    intake: 'clear end to end',
    'vent-slope': 'falls back to the furnace',
    'vent-clear-end-to-end': 'seen',
    trap: 'holds water, clear',
    'drain-on-water-test': 'runs free',
    'hose-condition': 'on, whole, tight and clear',
    'water-in-hose': 'ruled out',
    'hose-routing': 'as the diagram shows',
    port: 'clear to its full bore',
    'inducer-volts-under-load': 'as rated',
    'switch-wiring': 'sound',
    'fitted-part-number': 'is the factory number',
  }
  for (const [finding, value] of Object.entries(clear)) visit.see(finding, value)
  visit.show('Proving', [make + 26, make + 26, make + 27], 'pre-purge', {
    contacts: 'open',
    secondsWatched: 120,
    separateStarts: true,
    note: 'Three starts. Contact open each time, 24 V in and none out.',
  })
  const { house, team, on, caseId } = visit
  const part = team.factoryPartBy({
    at: proving.at,
    by: 'piet',
    on,
    band: house.band,
    revision: house.revision,
  })
  if (part !== undefined) {
    const { furnaceId } = house
    visit.say(
      'fitted part',
      { furnaceId, positionId: proving.positionId, caseId, printed: part.number },
      [1, 2],
    )
  }
  visit.checkSwitch(proving, {
    what: 'off the furnace',
    pulls: [make + 21, make + 22, make + 21].map((value) => toPascals(value / 100, 'inH2O')),
    gaugeId: team.gaugeId('G-01 yellow'),
    heldForTenSeconds: 'held',
    pumpLineProvenTight: true,
    note: 'Closes far too late, the same every time.',
  })
  visit.see('make-on-hand-pump', 'out of tolerance')
  visit.see('leaks-down-on-hand-pump', 'ruled out')
  visit.fitFactorySwitch('Factory switch replaced', 25)
  visit.endProven({
    mainCause: 'switch-drifted-or-leaking',
    minutes: 140,
    note: 'First one in two years where it really was the switch. Took two hours to be allowed to say so.',
  })
  return {
    shows: 'every look clear, the reading enough, the contact open: it was the switch',
    caseId: told.caseId,
    standing: 'repaired and proven',
    observed: { 'open-beyond-make': 'seen' },
  }
}

/** A general-purpose switch, found by somebody who looked under the cap. */
function screwUnderACap(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Coopers Yard 5', {
    by: 'dunja',
    on: '2025-12-09',
    body: { complaint: 'Smells odd and starts late', note: 'New owner since summer.' },
  })
  const low = told.stage('Low fire')
  const { house, caseId, visitId, ...visit } = told.visit('sunniva', '2025-12-09')
  const code = 'general-purpose-switch-fitted'
  visit.see(code, 'seen', 'Screw under a yellow cap, turned nearly out.')
  const body = {
    furnaceId: house.furnaceId,
    positionId: low.positionId,
    printed: 'ADJ 0.1-1.5, made for ventilation',
    what: 'adjustable or general-purpose switch',
    fittedWhen: 'before the sale, nobody knows',
    fittedBy: 'not known',
    foundOn: '2025-12-09',
    note: 'Closes on next to nothing. That is why it “worked”.',
  }
  visit.say('found fitted', body, [2, 4])
  const done = ['gas off', 'power off', 'tagged', 'occupant told']
  visit.say('danger answer', { caseId, visitId, dangers: [code], done }, [1, 2])
  const noticeId = visit.say(
    'shut-down notice',
    {
      furnaceId: house.furnaceId,
      caseId,
      on: '2025-12-09',
      found: 'An adjustable switch in the place of the low-fire switch. Nobody knows what it proves.',
      doNotRelightUntil: 'the factory switch is in and both stages are read hot, with CO',
      gas: 'off',
      power: 'off',
      tagged: true,
      told: 'owner, in person',
      toldAt: '2025-12-09T18:20:00.000Z',
      writtenNotice: true,
      authority: 'not asked for here',
      heatAndFrost: 'Stove downstairs, two heaters lent for the children’s room',
    },
    [4, 8],
  )
  visit.end({ how: 'left off', mainCause: 'wrong-switch-fitted', noticeId, minutes: 60 })
  const next = told.visit('sunniva', '2025-12-10')
  next.fitFactorySwitch('Factory switch in, the adjustable one taken along', 30)
  next.see(code, 'ruled out')
  next.see('vent-end', 'clear')
  next.see('trap', 'none: does not condense')
  next.say(
    'lifting',
    {
      noticeId,
      on: '2025-12-10',
      because: 'Factory switch in, both stages read hot, CO taken',
      licence: 'gas fitter, valley register 0417',
    },
    [2, 4],
  )
  next.endProven({
    mainCause: 'wrong-switch-fitted',
    contributingCause: 'port-plugged',
    minutes: 110,
    note: 'The port was half shut with rust: that is what the screw had been turned for.',
  })
  return {
    shows: 'a general-purpose switch, left off until the factory part was in',
    caseId: told.caseId,
    standing: 'repaired and proven',
    observed: { 'general-purpose-switch-fitted': 'ruled out' },
  }
}

/** A wire across the switch, and the nest that it hid. */
function wireAcrossIt(telling: CaseTelling): CaseShowing {
  const told = openToldCase(telling, 'Old Ropeworks, unit 3', {
    by: 'piet',
    on: '2026-02-05',
    body: { complaint: 'Light blinks, no heat', note: 'Tenant says a friend looked at it.' },
  })
  const { positionId } = told.stage('Single stage')
  const { house, caseId, visitId, ...visit } = told.visit('ott', '2026-02-05', {
    note: 'CO meter on before the door.',
  })
  visit.see('switch-after-inducer-start', 'read as closed before the inducer starts')
  visit.see('jumper-or-bypass', 'seen', 'Bell wire, twisted round both tabs.')
  const { furnaceId } = house
  const found = {
    furnaceId,
    positionId,
    printed: 'nothing',
    what: 'jumper or bypass',
    fittedWhen: 'last week, says the tenant',
    fittedBy: 'a friend of the tenant',
    foundOn: '2026-02-05',
  }
  visit.say('found fitted', found, [2, 4])
  const done = ['gas off', 'power off', 'tagged', 'occupant told']
  visit.say('danger answer', { caseId, visitId, dangers: ['jumper-or-bypass'], done }, [1, 2])
  visit.see('vent-end', 'blocked', 'Nest, old one. Starlings.')
  visit.repair(
    { done: 'Jumper out, wires back on the switch', positionId, switchReplaced: false, minutes: 5 },
    [3, 5],
  )
  visit.repair({ done: 'Nest out of the vent end', switchReplaced: false, minutes: 20 }, [12, 20])
  visit.see('jumper-or-bypass', 'ruled out')
  visit.see('vent-end', 'clear')
  visit.see('switch-after-inducer-start', 'closes within 15 s')
  visit.endProven({
    mainCause: 'vent-end-blocked',
    contributingCause: 'switch-bypassed',
    minutes: 90,
    note: 'Tenant and landlord have it in writing. The wire is in a bag with the date on it.',
  })
  return {
    shows: 'a wire across the switch, and the nest that it hid',
    caseId: told.caseId,
    standing: 'repaired and proven',
    observed: { 'jumper-or-bypass': 'ruled out' },
  }
}
