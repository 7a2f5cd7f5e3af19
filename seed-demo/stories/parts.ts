import type { Showing } from '../showing'
import type { Part, Team } from '../team'
import { label, page, support } from '../tell'

/** Part numbers that were replaced: same setting, changed, not stated; a kit; a chain; one for several; one twice. */
export function tellParts(team: Team): Showing[] {
  return [
    sameSetting(team),
    ...changedSetting(team),
    settingNotStated(team),
    chainOfThree(team),
    ...oneForSeveral(team),
    typedTwice(team),
  ]
}

type Replaced = { old: Part; by: Part; setting: 'same' | 'changed' | 'not stated'; kit?: boolean }

function supersede(team: Team, on: string, { old, by, setting, kit = false }: Replaced, statedIn: string) {
  const body = { oldPartId: old.id, newPartId: by.id, setting, kit, statedIn, on }
  return team.say({ kind: 'supersession', by: 'piet', on, body })
}

function sameSetting(team: Team): Showing {
  const at = 'Marl 080 / Single stage'
  const furnace = 'Old Ropeworks, unit 3'
  const old = team.part({ at, by: 'ott', on: '2024-12-09' })
  label(team, { at, by: 'ott', on: '2024-12-09', furnace, readOffPart: old.id })
  page(team, { at, by: 'piet', on: '2022-12-12' })
  const by = team.part({
    at,
    by: 'piet',
    on: '2025-05-06',
    listedIn: 'Marl parts list, page 14, spring issue',
  })
  supersede(team, '2025-05-06', { old, by, setting: 'same' }, 'Marl parts list, page 14, spring issue')
  return {
    shows: 'superseded, same setting: one level down until somebody names the new number',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}

function changedSetting(team: Team): Showing[] {
  const at = 'Thistle 1 060 / Single stage'
  const furnace = 'Saltpan Lane 9'
  const old = team.part({ at, by: 'ott', on: '2025-01-20' })
  label(team, { at, by: 'ott', on: '2025-01-20', furnace, readOffPart: old.id })
  const by = team.part({ at, by: 'dunja', on: '2025-12-01', listedIn: 'Thistle kit sheet 12' })
  supersede(team, '2025-12-01', { old, by, setting: 'changed', kit: true }, 'Thistle kit sheet 12')
  support(team, {
    at,
    by: 'dunja',
    on: '2025-12-02',
    reference: 'E-9034',
    says: 'closes at 1.07, opens at 0.89 in. w.c.',
    partNumber: by.number,
    note: 'New number goes with the new hose and orifice in the kit. Do not mix it with the old switch.',
  })
  const positionId = team.positionId(at)
  const furnaceId = team.furnaceId(furnace)
  return [
    {
      shows: 'superseded, changed setting: asks which part is fitted',
      positionId,
      furnaceId,
      closes: { level: 'In dispute' },
      asks: ['part number'],
    },
    {
      shows: 'superseded, changed setting: the new part has its own rating',
      positionId,
      furnaceId,
      partNumber: by.number,
      closes: { level: 'Supported' },
      opens: { level: 'Supported' },
    },
  ]
}

function settingNotStated(team: Team): Showing {
  const at = 'Brae 075 / Blocked drain'
  const furnace = 'Quarlfoot reading room'
  const old = team.part({ at, by: 'ott', on: '2025-02-03' })
  label(team, { at, by: 'ott', on: '2025-02-03', furnace, readOffPart: old.id })
  page(team, { at, by: 'piet', on: '2025-02-05' })
  const by = team.part({ at, by: 'piet', on: '2025-08-19', listedIn: 'Brae drain kit sheet' })
  supersede(team, '2025-08-19', { old, by, setting: 'not stated', kit: true }, 'Brae drain kit sheet')
  return {
    shows: 'superseded by a kit, setting not stated',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}

function chainOfThree(team: Team): Showing {
  const at = 'Sallow 090 / Single stage'
  const furnace = 'Upper Vennet clinic'
  const first = team.part({ at, by: 'lale', on: '2025-03-12', band: 1 })
  label(team, { at, by: 'lale', on: '2025-03-12', band: 1, furnace, readOffPart: first.id })
  const second = team.part({
    at,
    by: 'piet',
    on: '2025-03-13',
    band: 1,
    listedIn: 'Sallow parts list, page 19',
  })
  const third = team.part({ at, by: 'piet', on: '2025-03-13', band: 1, listedIn: 'Sallow kit sheet 3' })
  supersede(team, '2025-03-13', { old: first, by: second, setting: 'same' }, 'Sallow parts list, page 19')
  supersede(team, '2025-03-13', { old: second, by: third, setting: 'same', kit: true }, 'Sallow kit sheet 3')
  support(team, {
    at,
    by: 'piet',
    on: '2025-03-14',
    band: 1,
    reference: 'F-18822',
    partNumber: third.number,
    note: 'Third number since that furnace was hung. Setting unchanged all along, she says.',
  })
  return {
    shows: 'a chain of three numbers: a rating is not carried over from one part to another',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}

function oneForSeveral(team: Team): Showing[] {
  const sizes = ['Rill 050 / Single stage', 'Rill 075 / Single stage', 'Rill 100 / Single stage'] as const
  const settings = ['changed', 'same', 'not stated'] as const
  const olds = sizes.map((at) => team.part({ at, by: 'dunja', on: '2025-06-03' }))
  const by = team.part({
    at: sizes[0],
    by: 'dunja',
    on: '2025-06-03',
    positionIds: sizes.map((at) => team.positionId(at)),
    listedIn: 'Rill bulletin, summer 2025',
    note: 'One switch for three sizes now. The bulletin gives no number for the 100.',
  })
  olds.forEach((old, index) => {
    supersede(team, '2025-06-04', { old, by, setting: settings[index]! }, 'Rill bulletin, summer 2025')
  })
  page(team, { at: sizes[0], by: 'dunja', on: '2023-06-05', note: 'Page is from before the bulletin.' })
  return [
    {
      shows: 'one number that replaces several',
      positionId: team.positionId(sizes[0]),
      elevationMetres: 420,
      closes: { level: 'Supported' },
    },
  ]
}

function typedTwice(team: Team): Showing {
  const at = 'Marl Two 105 / High fire'
  const furnace = 'Pass Inn, kitchen side'
  const kept = team.part({ at, by: 'piet', on: '2025-11-18', band: 1 })
  const duplicate = team.part({
    at,
    by: 'lale',
    on: '2025-11-19',
    band: 1,
    partNumber: kept.number.replace('.', ' '),
    note: 'Typed in the boiler room, no signal.',
  })
  page(team, { at, by: 'piet', on: '2025-11-18', band: 1 })
  label(team, { at, by: 'lale', on: '2025-11-19', band: 1, furnace, readOffPart: duplicate.id })
  const reason = 'One part, typed with a point and with a blank.'
  const body = { kept: kept.id, duplicate: duplicate.id, reason }
  team.say({ kind: 'same as', by: 'dunja', on: '2025-11-21', body })
  return {
    shows: 'one part typed twice and joined',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
  }
}
