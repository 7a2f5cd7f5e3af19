import type { Showing } from '../showing'
import type { Team } from '../team'
import { counter, label, page, support } from '../tell'
import { dictatedClose, inches } from '../writing'

/** One case for each level of a standing: Verified, Supported, Unverified, In dispute, Not on file. */
export function tellLevels(team: Team): Showing[] {
  return [...verified(team), supported(team), unverified(team), ...inDispute(team), notOnFile(team)]
}

function verified(team: Team): Showing[] {
  const at = 'Tansy 070 / Single stage'
  page(team, { at, by: 'dunja', on: '2022-12-06' })
  page(team, {
    at,
    by: 'dunja',
    on: '2022-12-06',
    band: 1,
    note: 'Second column of the same table. Ours is the one for the hills.',
  })
  const furnace = 'Threshing Floor 2'
  label(team, { at, by: 'sunniva', on: '2025-02-10', band: 1, furnace, note: 'Clean label, read it twice.' })
  const positionId = team.positionId(at)
  return [
    {
      shows: 'Verified, both actions: the sheet and the label on the factory switch',
      positionId,
      furnaceId: team.furnaceId(furnace),
      closes: { level: 'Verified' },
      opens: { level: 'Verified' },
      asks: [],
    },
    {
      shows: 'the same without a furnace: asks for the elevation',
      positionId,
      closes: { level: 'Unverified' },
      asks: ['elevation'],
    },
  ]
}

function supported(team: Team): Showing {
  const at = 'Tansy 090 / Single stage'
  page(team, { at, by: 'piet', on: '2022-12-12', band: 1, note: 'Column “above 3,800 ft”.' })
  return {
    shows: 'Supported, both actions: the sheet alone',
    positionId: team.positionId(at),
    elevationMetres: 1480,
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}

function unverified(team: Team): Showing {
  const at = 'Rill 075 / Single stage'
  const { make, break: opens } = team.points(at, { band: 1 })
  const furnace = 'Rowan Ladder 8'
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-11-04',
    band: 1,
    readBack: false,
    says: dictatedClose(inches(make)),
    note: 'Line dropped before I could read it back. Ring again when they open.',
  })
  team.report({
    at,
    by: 'tobin',
    on: '2025-11-04',
    says: `opens ${inches(opens)} in. w.c.`,
    source: 'remembered',
    covers: 'this furnace',
    furnace,
    note: 'In marker inside the door. Not our hand.',
  })
  return {
    shows: 'Unverified: a distributor who was not read back; a number in marker',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Unverified' },
    opens: { level: 'Unverified' },
  }
}

function inDispute(team: Team): Showing[] {
  const at = 'Wendle 080 / High fire'
  const furnace = 'Coopers Yard 5'
  const { make } = team.points(at)
  page(team, { at, by: 'piet', on: '2022-12-13' })
  label(team, { at, by: 'sunniva', on: '2025-01-13', furnace })
  support(team, {
    at,
    by: 'dunja',
    on: '2026-02-11',
    reference: 'F-20418',
    says: dictatedClose(inches(make + 7)),
    note: 'He says there was a running change last year and our sheet is old. He will look for the bulletin.',
  })
  const at2 = 'Brae 050 / Low fire'
  const points = team.points(at2)
  page(team, { at: at2, by: 'piet', on: '2023-01-09' })
  counter(team, {
    at: at2,
    by: 'piet',
    on: '2025-09-16',
    reference: '118-204',
    distributor: 'quarl',
    says: `closes at ${inches(points.make + 4)}, opens at ${inches(points.break + 4)} in. w.c.`,
    note: 'Read back and she stuck to it. Their screen is from the spring.',
  })
  return [
    {
      shows: 'In dispute: sheet and label against factory support',
      positionId: team.positionId(at),
      furnaceId: team.furnaceId(furnace),
      closes: { level: 'In dispute' },
      opens: { level: 'Verified' },
    },
    {
      shows: 'In dispute, both actions: the sheet against a distributor',
      positionId: team.positionId(at2),
      elevationMetres: 420,
      closes: { level: 'In dispute' },
      opens: { level: 'In dispute' },
    },
  ]
}

function notOnFile(team: Team): Showing {
  return {
    shows: 'Not on file',
    positionId: team.positionId('Rill Two 100 / Low fire'),
    closes: { level: 'Not on file' },
    opens: { level: 'Not on file' },
    unstated: { level: 'Not on file' },
    asks: [],
  }
}
