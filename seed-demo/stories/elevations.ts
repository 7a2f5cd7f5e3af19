import type { Showing } from '../showing'
import type { Team } from '../team'
import { label, page, support } from '../tell'

/** Ratings that differ by elevation, revision or serial, so that the answer depends on which furnace it is. */
export function tellElevations(team: Team): Showing[] {
  return [...bandsAndRevisions(team), ...twoBands(team), ...revisionsAlone(team), serials(team)]
}

function bandsAndRevisions(team: Team): Showing[] {
  const low = 'Larkfell 2 080 / Low fire'
  const high = 'Larkfell 2 080 / High fire'
  const sheet = { by: 'piet', on: '2022-12-05' } as const
  page(team, { at: low, ...sheet, note: 'Four lines on that page: mind the revision letter.' })
  page(team, { at: low, ...sheet, band: 1 })
  page(team, { at: low, ...sheet, band: 1, revision: 1 })
  page(team, { at: low, ...sheet, band: 2, revision: 1 })
  page(team, { at: high, ...sheet })
  page(team, { at: high, ...sheet, band: 1, revision: 1 })
  const furnace = 'Ferry Steps 4'
  label(team, { at: low, by: 'ott', on: '2024-12-04', furnace })
  page(team, {
    at: 'Larkfell 2 100 / Low fire',
    by: 'lale',
    on: '2024-12-16',
    band: 2,
    revision: 1,
    note: 'From the booklet in the door pocket at Snowgate 3.',
  })
  const positionId = team.positionId(low)
  return [
    {
      shows: 'revision B in the valley: Verified',
      positionId,
      furnaceId: team.furnaceId(furnace),
      closes: { level: 'Verified' },
      asks: [],
    },
    {
      shows: 'revision D half-way up: another line of the sheet',
      positionId,
      furnaceId: team.furnaceId('Tollgate 6'),
      closes: { level: 'Supported' },
      asks: [],
    },
    {
      shows: 'a furnace of which neither is recorded: asks for both',
      positionId,
      furnaceId: team.furnaceId('Snowgate 9'),
      closes: { level: 'Unverified' },
      asks: ['elevation', 'revision'],
    },
  ]
}

function twoBands(team: Team): Showing[] {
  const at = 'Wendle 080 / Low fire'
  page(team, { at, by: 'piet', on: '2022-12-13' })
  page(team, { at, by: 'piet', on: '2022-12-13', band: 1 })
  const furnace = 'Vennet post office'
  label(team, {
    at,
    by: 'lale',
    on: '2025-01-22',
    band: 1,
    furnace,
    note: 'Altitude switch, as it should be up here.',
  })
  return [
    {
      shows: 'the altitude switch at 2,352 m: Verified',
      positionId: team.positionId(at),
      furnaceId: team.furnaceId(furnace),
      closes: { level: 'Verified' },
      opens: { level: 'Verified' },
    },
    {
      shows: 'the same switch without a furnace: asks for the elevation',
      positionId: team.positionId(at),
      asks: ['elevation'],
    },
  ]
}

function revisionsAlone(team: Team): Showing[] {
  const at = 'Osier 080 / High fire, across both ports'
  page(team, { at, by: 'dunja', on: '2022-12-19', band: 1 })
  page(team, { at, by: 'dunja', on: '2022-12-19', band: 1, revision: 1, note: 'Revision 4 and later.' })
  return [
    {
      shows: 'one elevation, two revision ranges: asks for the revision',
      positionId: team.positionId(at),
      elevationMetres: 1490,
      asks: ['revision'],
    },
    {
      shows: 'revision 5 in Upper Vennet',
      positionId: team.positionId(at),
      furnaceId: team.furnaceId('Goatherd Lane 1'),
      closes: { level: 'Supported' },
      asks: [],
    },
  ]
}

function serials(team: Team): Showing {
  const at = 'Cobbet 075 / Single stage'
  support(team, {
    at,
    by: 'piet',
    on: '2025-03-06',
    reference: 'T-61120',
    covers: { serials: { to: 'R2003-9999' }, elevation: team.band(at, 0) },
    second: 'ragna',
    note: 'Only up to serials of March 2020. After that another inducer. Ragna listened in.',
  })
  return {
    shows: 'a furnace without its elevation on file: asks for it, the serial is known',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId('Ferry Steps 11'),
    closes: { level: 'Unverified' },
    asks: ['elevation'],
  }
}
