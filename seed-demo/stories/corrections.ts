import { toPascals } from '@/lib/core/pressure'
import type { Showing } from '../showing'
import type { Team } from '../team'
import { counter, label, page, support } from '../tell'
import { inches, sheetLine } from '../writing'

/** What happens to a report afterwards: withdrawn, overruled, gone stale, or listed as a lead beside better ones. */
export function tellCorrections(team: Team): Showing[] {
  return [withdrawn(team), settled(team), stale(team), leadsBeside(team), heardByTwo(team)]
}

function withdrawn(team: Team): Showing {
  const at = 'Plover 095 / Single stage'
  const reports = label(team, { at, by: 'tobin', on: '2025-10-08', covers: 'all' })
  for (const record of reports) {
    const reason = 'Wrong furnace. That label was on the unit next to it; I had the two plates mixed up.'
    team.say({ kind: 'withdrawal', by: 'tobin', on: '2025-10-08', body: { record, reason } })
  }
  return {
    shows: 'withdrawn by whoever said it: nothing is left on file',
    positionId: team.positionId(at),
    closes: { level: 'Not on file' },
    opens: { level: 'Not on file' },
  }
}

function settled(team: Team): Showing {
  const at = 'Sallow 110 / Single stage'
  const now = team.points(at)
  const before = { ...now, make: now.make - 9, break: now.break - 9 }
  const [oldMake, oldBreak] = page(team, {
    at,
    by: 'piet',
    on: '2025-01-16',
    source: 'older literature',
    says: sheetLine(before),
    covers: 'all',
    proof: { kind: 'document', name: 'Sallow booklet', page: '22', edition: '2016' },
    origin: 'Sallow booklet page 22 2016',
    note: 'The booklet from the binder. Brown with age.',
  })
  counter(team, {
    at,
    by: 'dunja',
    on: '2025-09-23',
    reference: 'RB 7655',
    covers: 'all',
    note: 'Not what the booklet says. Asked them to check; same again.',
  })
  const [make, opens] = support(team, {
    at,
    by: 'dunja',
    on: '2025-09-25',
    reference: 'F-19740',
    covers: 'all',
    note: 'Changed with the 2019 housing. She read me the drawing. This size keeps its switch above 5,000 ft.',
  })
  const settle = (action: 'closes' | 'opens', hundredths: number, evidence: string, overruled: string) =>
    team.say({
      kind: 'settlement',
      by: 'ragna',
      on: '2025-09-26',
      body: {
        positionId: team.positionId(at),
        action,
        pascals: toPascals(hundredths / 100, 'inH2O'),
        limit: 'nominal',
        evidenceReportId: evidence,
        overruledReportIds: [overruled],
        reason: 'Field support has the drawing of the housing that ours have. The booklet is from before it.',
      },
    })
  settle('closes', now.make, make!, oldMake!)
  settle('opens', now.break, opens!, oldBreak!)
  return {
    shows: 'a dispute settled by factory support with a reference',
    positionId: team.positionId(at),
    closes: { level: 'Verified' },
    opens: { level: 'Verified' },
    asks: [],
  }
}

function stale(team: Team): Showing {
  const at = 'Gable 100 / Single stage'
  support(team, {
    at,
    by: 'ragna',
    on: '2024-12-06',
    saidOn: '2024-09-12',
    reference: 'E-7716',
    note: 'From my own notebook. Rang them in the autumn and never typed it in.',
  })
  return {
    shows: 'a call more than two years old: one level down',
    positionId: team.positionId(at),
    closes: { level: 'Unverified' },
    opens: { level: 'Unverified' },
  }
}

function leadsBeside(team: Team): Showing {
  const at = 'Rill 125 / Single stage'
  const { make } = team.points(at)
  const covers = { elevation: team.band(at, 0) }
  team.report({
    at,
    by: 'ragna',
    on: '2022-09-26',
    says: `${inches(make)} close`,
    source: 'imported',
    covers,
    note: 'Binder, yellow tab. No idea who wrote it.',
  })
  team.report({
    at,
    by: 'ott',
    on: '2025-04-22',
    says: `closes ${inches(make + 1)} in. w.c.`,
    source: 'bench check',
    covers,
    gaugeId: team.gaugeId('G-01 yellow'),
    sense: 'suction',
    note: 'Three slow pulls: the middle one. New switch out of stock, never fitted.',
  })
  page(team, { at, by: 'piet', on: '2023-04-24' })
  return {
    shows: 'leads listed beside the sheet, never added to it',
    positionId: team.positionId(at),
    elevationMetres: 420,
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}

function heardByTwo(team: Team): Showing {
  const at = 'Larkfell 1 040 / Single stage'
  support(team, {
    at,
    by: 'piet',
    on: '2025-09-30',
    reference: 'T-63307',
    second: 'dunja',
    note: 'Both of us on the line. Digit by digit.',
  })
  return {
    shows: 'one call, two listeners: still one source',
    positionId: team.positionId(at),
    elevationMetres: 420,
    closes: { level: 'Supported' },
    opens: { level: 'Supported' },
  }
}
