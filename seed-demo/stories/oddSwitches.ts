import type { Showing } from '../showing'
import type { Team } from '../team'
import { counter, label, page } from '../tell'
import { inches } from '../writing'

/** Switches and labels that are not a plain suction switch with two plain numbers. */
export function tellOddSwitches(team: Team): Showing[] {
  return [
    twoPorts(team),
    contradictedPorts(team),
    opensOnRise(team),
    gasPressure(team),
    sensor(team),
    numberWithoutItsWord(team),
    undecodedLetters(team),
    oneSidedLimits(team),
  ]
}

function twoPorts(team: Team): Showing {
  const at = 'Fennel 080 / Proving'
  const furnace = 'Heron Wharf 2, upstairs'
  page(team, { at, by: 'piet', on: '2023-02-17' })
  label(team, {
    at,
    by: 'ott',
    on: '2025-02-17',
    furnace,
    between: 'two ports',
    note: 'Black hose low, white hose high. Photographed before I touched it.',
  })
  return {
    shows: 'a two-port switch',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
  }
}

function contradictedPorts(team: Team): Showing {
  const at = 'Osier 080 / Low fire, across both ports'
  page(team, { at, by: 'dunja', on: '2022-12-19', band: 1 })
  counter(team, {
    at,
    by: 'dunja',
    on: '2024-12-20',
    band: 1,
    reference: 'RB 7240',
    between: 'port and room',
    note: 'Says port to room. There are two hoses on it, so I doubt that.',
  })
  return {
    shows: 'one number, contradicting points: In dispute without another value',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId('Winch Road 21'),
    closes: { level: 'In dispute' },
    opens: { level: 'In dispute' },
  }
}

function opensOnRise(team: Team): Showing {
  const at = 'Dunnock 060 / Vent back-pressure'
  const furnace = 'Bakehouse, Kiln Street'
  page(team, { at, by: 'dunja', on: '2023-10-16' })
  label(team, { at, by: 'ott', on: '2025-10-15', furnace, note: 'On the outlet elbow, hard to see.' })
  return {
    shows: 'a switch that opens on rise',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId(furnace),
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
  }
}

function gasPressure(team: Team): Showing {
  const at = 'Thistle 2 080 / Low gas pressure'
  page(team, { at, by: 'dunja', on: '2025-02-25' })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-02-26',
    reference: 'RB 7371',
    note: 'Gas, not air. Confirmed both words.',
  })
  return {
    shows: 'a gas-pressure switch in the same string',
    positionId: team.positionId(at),
    furnaceId: team.furnaceId('Bellfounder Street 32'),
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
  }
}

function sensor(team: Team): Showing {
  const at = 'Fennel Sense 080 / Pressure sensor'
  const { make } = team.points(at)
  page(team, {
    at,
    by: 'piet',
    on: '2025-04-02',
    says: `LOW ${inches(make)} in. w.c. target`,
    covers: 'all',
    note: `Targets: low ${inches(make)}, middle ${inches(make + 27)}, high ${inches(make + 71)} in. w.c. The board shows what it reads.`,
  })
  return {
    shows: 'a sensor: a target from the sheet, no make point',
    positionId: team.positionId(at),
    closes: { level: 'Not on file' },
    unstated: { level: 'Supported' },
  }
}

function numberWithoutItsWord(team: Team): Showing {
  const at = 'Larkfell 1 080 / Single stage'
  page(team, {
    at,
    by: 'piet',
    on: '2025-03-18',
    says: `-${inches(team.points(at).make)} in. w.c.`,
    covers: 'all',
    note: 'One column headed “switch”. It does not say close or open.',
  })
  return {
    shows: 'a number of unstated action',
    positionId: team.positionId(at),
    closes: { level: 'Not on file' },
    opens: { level: 'Not on file' },
    unstated: { level: 'Supported' },
  }
}

function undecodedLetters(team: Team): Showing {
  const at = 'Thistle 1 080 / Single stage'
  label(team, {
    at,
    by: 'sunniva',
    on: '2025-03-20',
    says: `PR -${inches(team.points(at).make)}" WC`,
    covers: 'all',
    note: 'PR. I have heard it explained both ways, so I leave it as it stands.',
  })
  return {
    shows: 'PR on a label: kept as printed, not decoded',
    positionId: team.positionId(at),
    closes: { level: 'Not on file' },
    opens: { level: 'Not on file' },
    unstated: { level: 'Unverified' },
  }
}

function oneSidedLimits(team: Team): Showing {
  const at = 'Tansy 050 / Single stage'
  const { make, break: opens, tolerance } = team.points(at)
  page(team, { at, by: 'piet', on: '2023-04-11' })
  label(team, {
    at,
    by: 'ott',
    on: '2025-04-10',
    says: `CLOSE ${inches(make + tolerance)} MAX / OPEN ${inches(opens - tolerance)} MIN IN WC`,
    covers: { elevation: team.band(at, 0) },
    note: 'Switch from the van, in its sealed bag.',
  })
  return {
    shows: 'maximum close and minimum open, the edges of the sheet’s tolerance',
    positionId: team.positionId(at),
    elevationMetres: 420,
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
  }
}
