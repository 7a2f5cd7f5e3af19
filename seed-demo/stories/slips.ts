import type { Showing } from '../showing'
import type { Team } from '../team'
import { counter, label, page } from '../tell'
import { dictatedClose, dictatedOpen, inches, millibars } from '../writing'

/** One case for each slip that can be told from the reports. */
export function tellSlips(team: Team): Showing[] {
  return [
    tenTimes(team),
    aTenth(team),
    breakForMake(team),
    makeForBreak(team),
    sisterForThis(team),
    anotherUnit(team),
  ]
}

function tenTimes(team: Team): Showing {
  const at = 'Plover 070 / Single stage'
  const furnace = 'Tallow Row 17'
  const { make } = team.points(at)
  page(team, { at, by: 'piet', on: '2022-12-12' })
  label(team, { at, by: 'ott', on: '2025-01-08', furnace })
  counter(team, {
    at,
    by: 'piet',
    on: '2025-01-14',
    reference: '117-881',
    distributor: 'quarl',
    says: dictatedClose((make / 10).toFixed(1)),
    note: 'That is what he read, and read back. I would not hang my hat on it.',
  })
  return {
    shows: 'a decimal point slipped: ten times',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Supported', slip: 'ten times' },
    opens: { level: 'Verified' },
  }
}

function aTenth(team: Team): Showing {
  const at = 'Dunnock 060 / Single stage'
  const furnace = 'Bakehouse, Kiln Street'
  const { make } = team.points(at)
  page(team, { at, by: 'dunja', on: '2023-10-16' })
  label(team, { at, by: 'ott', on: '2025-10-15', furnace })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-10-16',
    reference: 'RB 7702',
    says: dictatedClose((make / 1000).toFixed(3)),
    note: 'Three decimals on their screen. A zero too many, I think.',
  })
  return {
    shows: 'a decimal point slipped: a tenth',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Supported', slip: 'a tenth' },
  }
}

function breakForMake(team: Team): Showing {
  const at = 'Brae 075 / High fire'
  const furnace = 'Quarlfoot reading room'
  label(team, { at, by: 'ott', on: '2025-02-03', furnace })
  page(team, { at, by: 'dunja', on: '2025-02-04' })
  counter(team, {
    at,
    by: 'piet',
    on: '2025-02-04',
    reference: '117-940',
    distributor: 'quarl',
    says: dictatedClose(inches(team.points(at).break)),
    note: 'Asked twice whether that is close. “It’s the number in the box.”',
  })
  return {
    shows: 'the break taken for the make',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'In dispute', slip: 'break taken for make' },
    opens: { level: 'Verified' },
  }
}

function makeForBreak(team: Team): Showing {
  const at = 'Gable 070 / Single stage'
  page(team, { at, by: 'dunja', on: '2023-11-13' })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-11-13',
    reference: 'RB 7790',
    says: dictatedOpen(inches(team.points(at).make)),
    note: 'New voice at the counter. To be asked again.',
  })
  return {
    shows: 'the make taken for the break',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId('Weighhouse, ground floor'),
    closes: { level: 'Supported' },
    opens: { level: 'In dispute', slip: 'make taken for break' },
  }
}

function sisterForThis(team: Team): Showing {
  const at = 'Brae 100 / Low fire'
  const sister = 'Brae 100 / High fire'
  const furnace = 'Dunmarrow school, east wing'
  page(team, { at: sister, by: 'dunja', on: '2023-01-27', band: 1 })
  page(team, { at, by: 'dunja', on: '2023-01-27', band: 1 })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-01-28',
    band: 1,
    reference: 'RB 7318',
    says: dictatedClose(inches(team.points(sister, { band: 1 }).make)),
    note: 'I said low fire, low fire, low fire.',
  })
  return {
    shows: 'the sister switch taken for this one',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'In dispute', slip: 'sister switch taken for this one' },
    opens: { level: 'Supported' },
  }
}

function anotherUnit(team: Team): Showing {
  const at = 'Sallow 070 / Single stage'
  page(team, { at, by: 'dunja', on: '2023-02-24' })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-02-25',
    reference: 'RB 7366',
    says: dictatedClose(millibars(team.points(at).make)),
    note: 'He swore it says inches. Sounds far too high for a single stage.',
  })
  return {
    shows: 'a number read in another unit: millibars taken down as inches',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId('Bellfounder Street 30'),
    closes: { level: 'In dispute', slip: 'number read in another unit' },
  }
}
