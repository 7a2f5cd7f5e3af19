import { ids } from '../../setup/smallFile'
import { at, of, provenEnding, provenRows, type Row, recordsOf } from '../end/provenCase'

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`

/** Four cases on two furnaces: repaired but not proven, its repeat that was proven, waiting for a part, and begun. */
export const cases = {
  before: id('d00'),
  proven: of.case,
  waiting: id('d10'),
  begun: id('d20'),
} as const

const visitOf = { before: id('d01'), waiting: id('d11'), begun: id('d21') }

export const beforeRows: readonly Row[] = [
  [
    cases.before,
    'case',
    { furnaceId: ids.furnace, complaint: 'Locks out in the morning', circuit: 'proving circuit' },
    '2025-12-04T15:00:00.000Z',
  ],
  [
    visitOf.before,
    'visit',
    { caseId: cases.before, on: '2025-12-04', licence: 'HV-2207' },
    '2025-12-04T15:10:00.000Z',
  ],
  [
    id('d02'),
    'reading',
    {
      furnaceId: ids.furnace,
      caseId: cases.before,
      visitId: visitOf.before,
      positionId: ids.low,
      samples: [0.47 * 249.08891],
      sense: 'suction',
      kind: 'one-port',
      between: 'port and room',
      tap: 'collector box',
      stage: 'low fire',
      door: 'on',
      phase: 'at make',
      contacts: 'open',
      situation: 'as found',
      when: 'as found',
      byTeeAtTheSwitch: true,
      gaugeId: ids.gauge,
      zeroed: true,
      asTyped: '.47 WC',
    },
    '2025-12-04T15:20:00.000Z',
  ],
  [
    id('d03'),
    'repair',
    {
      furnaceId: ids.furnace,
      caseId: cases.before,
      visitId: visitOf.before,
      done: 'Nest taken out of the vent end',
      switchReplaced: false,
      on: '2025-12-04',
    },
    '2025-12-04T15:30:00.000Z',
  ],
  [
    id('d04'),
    'ending',
    {
      caseId: cases.before,
      visitId: visitOf.before,
      how: 'repaired, not proven',
      mainCause: 'vent-end-blocked',
    },
    '2025-12-04T15:40:00.000Z',
  ],
]

export const waitingRows: readonly Row[] = [
  [
    cases.waiting,
    'case',
    { furnaceId: ids.bareFurnace, complaint: 'Blower hums and stops', circuit: 'something else' },
    '2026-01-20T15:00:00.000Z',
  ],
  [visitOf.waiting, 'visit', { caseId: cases.waiting, on: '2026-01-20' }, '2026-01-20T15:10:00.000Z'],
  [
    id('d12'),
    'ending',
    {
      caseId: cases.waiting,
      visitId: visitOf.waiting,
      how: 'waiting for part',
      partNumber: 'BL-20',
      supersessionChecked: true,
      orderedWhere: 'Hobb & Lane counter',
    },
    '2026-01-20T15:40:00.000Z',
  ],
]

export const begunRows: readonly Row[] = [
  [
    cases.begun,
    'case',
    { furnaceId: ids.bareFurnace, complaint: 'No heat, three blinks', circuit: 'proving circuit' },
    '2026-01-25T15:00:00.000Z',
  ],
  [visitOf.begun, 'visit', { caseId: cases.begun, on: '2026-01-25' }, '2026-01-25T15:10:00.000Z'],
]

export const endedProvenRows: readonly Row[] = [
  ...provenRows,
  [of.ending, 'ending', provenEnding, at('17:00')],
]

export const someCases = recordsOf([...beforeRows, ...endedProvenRows, ...waitingRows, ...begunRows])
