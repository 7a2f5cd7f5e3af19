import type { Team } from '../team'
import { label, page } from '../tell'

/** What the field does besides reading labels: finds what should not be there, repairs, chooses a unit. */
export function tellField(team: Team): void {
  foundFitted(team)
  repairs(team)
  preferences(team)
  withheld(team)
}

function foundFitted(team: Team): void {
  const adjustable = team.say({
    kind: 'part',
    by: 'lale',
    on: '2025-12-27',
    body: {
      partNumber: 'UNI-ADJ 3',
      class: 'general-purpose',
      fieldAdjustable: true,
      positionIds: [],
      note: 'Screw under the cap. None of these on the vans any more.',
    },
  })
  team.say({
    kind: 'found fitted',
    by: 'lale',
    on: '2025-12-27',
    body: {
      furnaceId: team.furnaceId('Larch Hut Lane 14'),
      positionId: team.positionId('Larkfell 1 060 / Single stage'),
      partId: adjustable,
      printed: 'UNI-ADJ 3, 0.2-3.0',
      what: 'adjustable or general-purpose switch',
      fittedWhen: 'Sunday 21 December 2025',
      fittedBy: 'us: Lale',
      foundOn: '2025-12-27',
      note: 'I put it in on the Sunday because they had no other heat. I should have left it off and brought heaters. Furnace is off and tagged, heaters are there, factory switch ordered.',
    },
  })
  team.say({
    kind: 'found fitted',
    by: 'lale',
    on: '2026-03-03',
    body: {
      furnaceId: team.furnaceId('Goatherd Lane 1'),
      positionId: team.positionId('Osier 080 / Low fire, across both ports'),
      printed: 'Close 130 Pa, open 105 Pa',
      what: 'switch for another elevation',
      fittedWhen: 'not known; the label is from 2021',
      fittedBy: 'whoever installed it',
      foundOn: '2026-03-03',
      note: 'That is the valley’s switch. Off and tagged, owner told, right one asked for.',
    },
  })
  team.say({
    kind: 'found fitted',
    by: 'sunniva',
    on: '2026-02-02',
    body: {
      model: 'QM1051',
      printed: 'nothing',
      what: 'jumper or bypass',
      fittedWhen: 'some weeks ago, says the tenant',
      fittedBy: 'a friend of the landlord',
      foundOn: '2026-02-02',
      note: 'Wire across the switch. Gas and power off, wire out, tagged. Landlord and tenant both told, in writing.',
    },
  })
}

function repairs(team: Team): void {
  const at = 'Larkfell 1 060 / Single stage'
  page(team, { at, by: 'piet', on: '2025-12-29', band: 2, note: 'Column “above 6,500 ft”.' })
  const part = team.factoryPart({ at, by: 'piet', on: '2025-12-29', band: 2 })
  const hut = team.furnaceId('Larch Hut Lane 14')
  const repair = (by: 'lale' | 'ott' | 'sunniva', on: string, body: object) =>
    team.say({ kind: 'repair', by, on, body: { switchReplaced: false, ...body, on } })
  repair('lale', '2025-12-30', {
    furnaceId: hut,
    positionId: team.positionId(at),
    done: 'Factory switch back in, the adjustable one taken out',
    fittedPart: part.id,
    switchReplaced: true,
    note: 'The real fault was ice in the last metre of vent. Re-hung with fall, then the switch made on the first try.',
  })
  label(team, {
    at,
    by: 'lale',
    on: '2025-12-30',
    band: 2,
    readOffPart: part.id,
    covers: 'this furnace',
    furnace: 'Larch Hut Lane 14',
  })
  repair('ott', '2025-02-04', {
    furnaceId: team.furnaceId('Quarlfoot reading room'),
    positionId: team.positionId('Brae 075 / Blocked drain'),
    done: 'Trap flushed and filled again',
    note: 'Metal flakes. Switch was right all along.',
  })
  repair('sunniva', '2025-11-05', {
    furnaceId: team.furnaceId('Rowan Ladder 8'),
    done: 'Nest out of the vent terminal, CO measured after',
  })
  repair('ott', '2026-01-16', {
    furnaceId: team.furnaceId('Ferry Steps 4'),
    done: 'Frost off the intake screen; hood ordered',
    note: 'Second time in two winters. The plume blows straight across.',
  })
}

function preferences(team: Team): void {
  const prefer = (by: 'ott' | 'dunja' | 'lale', on: string, body: object) =>
    team.say({ kind: 'preference', by, on, body })
  prefer('ott', '2024-12-02', { unit: 'inH2O', theme: 'dark', gaugeId: team.gaugeId('G-01 yellow') })
  prefer('dunja', '2024-12-02', { unit: 'inH2O', theme: 'light' })
  prefer('lale', '2025-01-13', { unit: 'Pa', theme: 'system', gaugeId: team.gaugeId('G-02 case') })
}

function withheld(team: Team): void {
  const reason = 'Where a key is kept does not belong in here.'
  const body = { record: team.furnaceId('Tallow Row 17'), fields: ['note'], reason }
  team.say({ kind: 'withholding', by: 'ragna', on: '2025-05-12', body })
}
