import { describe, expect, test } from 'vitest'
import { causes } from '@/lib/catalogue/causes'
import { findings } from '@/lib/catalogue/findings'
import { dangerFindingIds } from '@/lib/core/guard'
import { type Checked, checkRecord } from '@/lib/records/checkRecord'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { dangerSteps } from '@/lib/records/kinds/dangerAnswer'
import { endingWays } from '@/lib/records/kinds/ending'
import { recordKinds } from '@/lib/records/registry'
import { sampleIds as ids, sampleRecords } from './samples'

const bodyOf = (id: string) => structuredClone(sampleRecords.find((record) => record.id === id)!.body)

/** The samples up to the ending, and whatever else is on the device. */
const beforeEnding = sampleRecords.filter(({ id }) => id !== ids.ending)
const other = {
  furnace: '01920000-0000-7000-8000-0000000000a1',
  case: '01920000-0000-7000-8000-0000000000a2',
  visit: '01920000-0000-7000-8000-0000000000a3',
  ending: '01920000-0000-7000-8000-0000000000a4',
  withdrawal: '01920000-0000-7000-8000-0000000000a5',
} as const
const more = (id: string, kind: string, body: Record<string, unknown>, saidAt: string): HeldRecord => ({
  ...sampleRecords[0]!,
  id,
  kind,
  body,
  saidAt,
  seq: 900 + Number.parseInt(id.slice(-2), 16),
})
const elsewhere = [
  more(other.furnace, 'furnace', { ...bodyOf(ids.furnace), siteLabel: 'Weir House' }, '2026-01-24T08:00:00Z'),
  more(other.case, 'case', { ...bodyOf(ids.case), furnaceId: other.furnace }, '2026-01-24T08:01:00Z'),
  more(other.visit, 'visit', { caseId: other.case, on: '2026-01-24' }, '2026-01-24T08:02:00Z'),
]

const check = (
  kind: string,
  body: Record<string, unknown>,
  {
    records = [...beforeEnding, ...elsewhere],
    saidAt = '2026-02-05T08:00:00.000Z',
    earlier = [] as never[],
  } = {},
): Checked =>
  checkRecord(kind, body, foldTeamFile(records), { id: 'person-1', role: 'technician', saidAt }, earlier)

/** The rule that refuses, or the fields that do not fit; nothing when all is well. */
const wrong = (...asked: Parameters<typeof check>): string | Record<string, string> | undefined => {
  const checked = check(...asked)
  return checked.ok ? undefined : (checked.refusal?.rule ?? checked.fields)
}

describe('a case', () => {
  test('is on a furnace, and says what to do when it is not', () => {
    const checked = check('case', { ...bodyOf(ids.case), furnaceId: ids.maker })
    expect(checked).toMatchObject({
      refusal: {
        rule: 'a case is on a furnace',
        sentence: 'A case is the history of one furnace. Choose the furnace, or add it first.',
      },
    })
    expect(wrong('case', { complaint: 'No heat', circuit: 'proving circuit' })).toHaveProperty('furnaceId')
  })

  test('says what it is about', () => {
    const { circuit, ...body } = bodyOf(ids.case)
    expect(circuit).toBeDefined()
    expect(wrong('case', body)).toEqual({
      circuit: 'Say whether it is about the proving circuit or something else.',
    })
  })

  test('takes a note of 10,000 characters, and not one more', () => {
    expect(wrong('case', { ...bodyOf(ids.case), note: 'n'.repeat(10_000) })).toBeUndefined()
    expect(wrong('case', { ...bodyOf(ids.case), note: 'n'.repeat(10_001) })).toEqual({
      note: 'A note holds at most 10,000 characters. Split it in two.',
    })
  })
})

describe('what belongs to a case', () => {
  const ofVisit = [
    'finding',
    'reading',
    'combustionTest',
    'pumpCheck',
    'dangerAnswer',
    'caseRepair',
    'ending',
  ] as const
  const kindOf = (name: keyof typeof ids) => sampleRecords.find(({ id }) => id === ids[name])!.kind

  test.each(ofVisit)('%s: on a visit of another case it is refused', (name) => {
    const checked = check(kindOf(name), { ...bodyOf(ids[name]), visitId: other.visit })
    expect(checked).toMatchObject({
      refusal: {
        rule: 'it belongs to its case',
        sentence: 'The visit belongs to another case. Open it from the right case.',
      },
    })
  })

  test.each(ofVisit)('%s: on what is no case it is refused', (name) => {
    const checked = check(kindOf(name), { ...bodyOf(ids[name]), caseId: ids.furnace })
    expect(checked).toMatchObject({
      refusal: { sentence: 'The case that it names is no case. Open it from the case.' },
    })
  })

  test.each(['reading', 'combustionTest', 'pumpCheck', 'caseRepair', 'fittedPart', 'notice'] as const)(
    '%s: for another furnace than the case’s it is refused',
    (name) => {
      const checked = check(kindOf(name), { ...bodyOf(ids[name]), furnaceId: other.furnace })
      expect(checked).toMatchObject({
        refusal: { sentence: 'The case is on another furnace. Open it from the right case.' },
      })
      expect(check(kindOf(name), { ...bodyOf(ids[name]), furnaceId: ids.gauge })).toMatchObject({
        refusal: { rule: 'it belongs to its case', sentence: expect.stringContaining('is no furnace') },
      })
    },
  )

  test('two furnaces that were joined are one furnace', () => {
    const join = more(
      '01920000-0000-7000-8000-0000000000b1',
      'same as',
      { kept: other.furnace, duplicate: ids.furnace, reason: 'Entered twice.' },
      '2026-01-25T08:00:00Z',
    )
    const records = [...beforeEnding, ...elsewhere, join]
    const combustion = { ...bodyOf(ids.combustionTest), furnaceId: other.furnace }
    expect(wrong('combustion test', combustion, { records })).toBeUndefined()
    expect(
      wrong('baseline', { ...bodyOf(ids.baseline), furnaceId: other.furnace }, { records }),
    ).toBeUndefined()
  })

  test('a visit is of a case', () => {
    expect(wrong('visit', { caseId: ids.furnace, on: '2026-02-05' })).toBe('it belongs to its case')
  })

  test('a reading and a repair name a visit with their case, or neither', () => {
    for (const [kind, name] of [
      ['reading', 'reading'],
      ['repair', 'caseRepair'],
    ] as const) {
      const { caseId, visitId, ...alone } = bodyOf(ids[name])
      expect(wrong(kind, alone)).toBeUndefined()
      for (const half of [{ caseId }, { visitId }])
        expect(wrong(kind, { ...alone, ...half })).toEqual({
          visitId: expect.stringMatching(
            /^A \w+ of a case belongs to one of its visits\. Name both, or neither\.$/,
          ),
        })
    }
  })

  test('a case, its first visit and what is found there can be said in one step', () => {
    const caseId = '01930000-0000-7000-8000-000000000001'
    const visitId = '01930000-0000-7000-8000-000000000002'
    const earlier = [
      { id: caseId, kind: 'case', body: bodyOf(ids.case) },
      { id: visitId, kind: 'visit', body: { caseId, on: '2026-02-05' } },
    ]
    const body = { caseId, visitId, finding: 'spillage', value: 'seen' }
    const saying = { id: 'person-1', role: 'technician', saidAt: '2026-02-05T08:00:00Z' } as const
    const file = foldTeamFile(sampleRecords)
    expect(checkRecord('finding', body, file, saying, earlier)).toEqual({ ok: true })
    expect(checkRecord('finding', body, file, saying, earlier.slice(0, 1))).toMatchObject({
      refusal: { rule: 'it belongs to its case' },
    })
  })
})

describe('a finding', () => {
  const saying = (finding: string, value: string) =>
    wrong('finding', { ...bodyOf(ids.finding), finding, value })

  test('every finding of the catalogue is taken with each of its values', () => {
    for (const { id, values } of findings)
      for (const value of values) expect([id, value, saying(id, value)]).toEqual([id, value, undefined])
  })

  test('one that the catalogue does not know is refused, and told what to do instead', () => {
    const checked = check('finding', { ...bodyOf(ids.finding), finding: 'bad-vibes' })
    expect(checked).toMatchObject({
      refusal: {
        rule: 'a finding of the catalogue',
        sentence: 'There is no finding called “bad-vibes”. Choose one from the list, or write it as a note.',
      },
    })
  })

  test('a name that means something to JavaScript is an unknown finding like any other', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty'])
      expect(saying(name, 'seen')).toBe('a finding of the catalogue')
  })

  test('a value that the finding does not have is refused, and the values are named', () => {
    const body = { ...bodyOf(ids.finding), finding: 'gas-input', value: 'seen' }
    expect(check('finding', body)).toMatchObject({
      refusal: {
        sentence: '“Gas input, clocked” has no value “seen”. Choose one of: within range, out of range.',
      },
    })
    expect(saying('gas-input', 'not checked')).toBe('a finding of the catalogue')
  })
})

describe('an ending', () => {
  const minimal = { caseId: ids.case, visitId: ids.visit }

  test.each(endingWays)('%s: is taken in without anything that its way asks for', (how) => {
    expect(wrong('ending', { ...minimal, how })).toBeUndefined()
  })

  test('needs one of the six ways', () => {
    expect(wrong('ending', minimal)).toEqual({ how: 'Choose how the visit ended.' })
    expect(wrong('ending', { ...minimal, how: 'fixed' })).toEqual({ how: 'Choose how the visit ended.' })
  })

  test('every cause of the catalogue can be named, and that it is not on the list', () => {
    for (const mainCause of [...causes.map(({ id }) => id), 'not on the list'])
      expect([mainCause, wrong('ending', { ...minimal, how: 'repaired, not proven', mainCause })]).toEqual([
        mainCause,
        undefined,
      ])
  })

  test.each(['mainCause', 'contributingCause'])(
    'an unknown %s is refused, and told what to do instead',
    (field) => {
      for (const cause of ['bad luck', '__proto__', 'constructor'])
        expect(check('ending', { ...minimal, how: 'repaired, not proven', [field]: cause })).toMatchObject({
          refusal: {
            rule: 'a cause of the catalogue',
            sentence: `There is no cause called “${cause}”. Choose one from the list, or say that it is not on the list and describe it in the note.`,
          },
        })
    },
  )

  test('a second one of the same visit is taken in as well: two people can end a visit at once', () => {
    expect(
      wrong('ending', { ...minimal, how: 'repair declined' }, { records: sampleRecords }),
    ).toBeUndefined()
  })

  test('an answer to a danger names dangers of the guard’s list, and what was done', () => {
    const answer = { ...minimal, dangers: [...dangerFindingIds], done: [...dangerSteps] }
    expect(wrong('danger answer', answer)).toBeUndefined()
    expect(wrong('danger answer', { ...answer, dangers: [] })).toEqual({
      dangers: 'Name the dangers that this answers.',
    })
    expect(wrong('danger answer', { ...answer, dangers: ['draught'] })).toHaveProperty(['dangers.0'])
  })
})

describe('an answer to a danger', () => {
  const ofVisit = { caseId: ids.case, visitId: ids.visit }
  const answer = (dangers: string[], ...done: string[]) =>
    wrong('danger answer', { ...ofVisit, dangers, done })

  test('says that the gas is off, the furnace tagged and the occupant told, or what of it is not done yet', () => {
    expect(answer(['spillage'], 'gas off', 'tagged', 'occupant told')).toBeUndefined()
    expect(answer(['spillage'], 'gas off')).toEqual({
      done: 'Not done yet: tagged, occupant told. Do that first; until then the causes stay hidden.',
    })
  })

  test('where everybody had to leave, nothing but an all-clear answers', () => {
    const allClear = 'all clear from the gas supplier or the emergency service'
    const both = ['smell-of-gas', 'spillage']
    expect(
      answer(both, 'everybody out', 'called from outside', 'gas off', 'tagged', 'occupant told'),
    ).toEqual({
      done: `Not done yet: ${allClear}. Do that first; until then the causes stay hidden.`,
    })
    expect(answer(both, allClear)).toBeUndefined()
  })
})

describe('once a visit has ended', () => {
  const endedAt = sampleRecords.find(({ id }) => id === ids.ending)!.saidAt
  const later = new Date(Date.parse(endedAt) + 5 * 60_000).toISOString()
  const sooner = new Date(Date.parse(endedAt) - 5 * 60_000).toISOString()
  const barred = 'the visit has ended'
  const bodies = (['finding', 'reading', 'combustionTest', 'pumpCheck'] as const).map(
    (name) => [name, sampleRecords.find(({ id }) => id === ids[name])!] as const,
  )

  test.each(bodies)('%s: said afterwards it is refused on the device too', (_, { kind, body }) => {
    const records = sampleRecords
    expect(check(kind, body, { records, saidAt: later })).toMatchObject({
      refusal: {
        rule: barred,
        sentence: 'This visit had ended when it was said. Begin a new visit on the case and record it there.',
      },
    })
    for (const saidAt of [sooner, endedAt]) expect(wrong(kind, body, { records, saidAt })).toBeUndefined()
  })

  test('withdrawing the ending opens the visit again', () => {
    const withdrawn = more(other.withdrawal, 'withdrawal', { record: ids.ending, reason: 'Not yet.' }, later)
    const records = [...sampleRecords, withdrawn]
    expect(wrong('finding', bodyOf(ids.finding), { records, saidAt: later })).toBeUndefined()
  })

  test('of two endings the first counts', () => {
    const second = more(other.ending, 'ending', bodyOf(ids.ending), sooner)
    const records = [...sampleRecords, second]
    expect(wrong('finding', bodyOf(ids.finding), { records, saidAt: endedAt })).toBe(barred)
  })

  test('two clocks that differ by less than a minute are taken as one', () => {
    const inTime = (ms: number) => new Date(Date.parse(endedAt) + ms).toISOString()
    const at = (saidAt: string) => wrong('finding', bodyOf(ids.finding), { records: sampleRecords, saidAt })
    expect(at(inTime(60_000))).toBeUndefined()
    expect(at(inTime(60_001))).toBe(barred)
  })

  test('a danger is taken in whenever it is said', () => {
    const saying = (value: string) =>
      wrong(
        'finding',
        { ...bodyOf(ids.finding), finding: 'spillage', value },
        { records: sampleRecords, saidAt: later },
      )
    expect(saying('seen')).toBeUndefined()
    expect(saying('ruled out')).toBe(barred)
  })

  test('a repair written down in the van, the notice, its lifting and the answer to a danger are still taken in', () => {
    for (const name of ['caseRepair', 'notice', 'lifting', 'dangerAnswer'] as const) {
      const { kind, body } = sampleRecords.find(({ id }) => id === ids[name])!
      expect(wrong(kind, body, { records: sampleRecords, saidAt: later })).toBeUndefined()
    }
  })
})

describe('a repair', () => {
  test('that replaced a switch names the factory part that was fitted', () => {
    const { fittedPart, ...body } = bodyOf(ids.caseRepair)
    expect(fittedPart).toBeDefined()
    expect(wrong('repair', body)).toEqual({
      fittedPart:
        'Name the factory part that was fitted. If it is an adjustable or general-purpose switch, record it as found fitted.',
    })
    expect(wrong('repair', { ...body, switchReplaced: false })).toBeUndefined()
  })

  test('with a general-purpose switch is refused in version 2 as in version 1', () => {
    expect(wrong('repair', { ...bodyOf(ids.caseRepair), fittedPart: ids.generic })).toBe(
      'no general-purpose switch',
    )
  })

  test('of version 1, without any of what version 2 added, is still a repair', () => {
    const { versions } = recordKinds.repair!
    expect(versions[1]!.safeParse(bodyOf(ids.repair)).success).toBe(true)
    expect(versions[2]!.safeParse(bodyOf(ids.repair)).success).toBe(false)
    expect(versions[1]!.safeParse(bodyOf(ids.caseRepair)).success).toBe(false)
  })

  test('that need not have been made is recorded like any other: the rule bars advice, not the truth', () => {
    const switched = { ...bodyOf(ids.caseRepair), done: 'Switch replaced, nothing measured' }
    expect(wrong('repair', switched)).toBeUndefined()
  })
})

describe('a baseline', () => {
  test('is a reading of the same furnace', () => {
    const onOther = { ...bodyOf(ids.baseline), furnaceId: other.furnace }
    expect(wrong('baseline', onOther)).toBe('a baseline is a reading')
    expect(wrong('baseline', { ...bodyOf(ids.baseline), readingId: ids.finding })).toBe(
      'a baseline is a reading',
    )
  })

  test('is taken as in service, or at one port to the room; with something opened it is none', () => {
    const withReading = (situation: string) => {
      const records = beforeEnding.map((record) =>
        record.id === ids.reading ? { ...record, body: { ...record.body, situation } } : record,
      )
      return wrong('baseline', bodyOf(ids.baseline), { records })
    }
    for (const situation of ['as found', 'calm', 'first port to the room', 'second port to the room'])
      expect([situation, withReading(situation)]).toEqual([situation, undefined])
    for (const situation of ['vent opened', 'intake off', 'after draining', 'window open', 'in gusts'])
      expect([situation, withReading(situation)]).toEqual([situation, 'a baseline is a reading in service'])
  })
})

describe('measuring', () => {
  test('a reading whose lowest is above its highest is a slip', () => {
    expect(wrong('reading', { ...bodyOf(ids.reading), lowest: 110, highest: 100 })).toEqual({
      lowest: 'The lowest value is above the highest. Swap the two.',
    })
  })

  test('a reading needs at least one sample, and no sample is below zero', () => {
    expect(wrong('reading', { ...bodyOf(ids.reading), samples: [] })).toEqual({
      samples: 'Type what the gauge shows.',
    })
    expect(wrong('reading', { ...bodyOf(ids.reading), samples: [-1] })).toHaveProperty(['samples.0'])
  })

  test('a combustion test says something, of the room or of the flue', () => {
    const { roomCoPpm, roomCoLimitPpm, ...body } = bodyOf(ids.combustionTest)
    expect(wrong('combustion test', { ...body, flueCoPpm: [] })).toEqual({
      roomCoPpm: 'Type what the meter shows in the room or in the flue.',
    })
    expect(wrong('combustion test', body)).toBeUndefined()
    expect(wrong('combustion test', { ...body, flueCoPpm: [], roomCoPpm, roomCoLimitPpm })).toBeUndefined()
  })

  test('CO in the room comes with the employer’s limit, so that no figure stands there unjudged', () => {
    const { roomCoLimitPpm, ...body } = bodyOf(ids.combustionTest)
    expect(roomCoLimitPpm).toBeDefined()
    expect(wrong('combustion test', { ...body, roomCoPpm: 70 })).toEqual({
      roomCoLimitPpm:
        'Type the limit that your employer has set for CO in the room. If none is set, type 0: then any CO counts.',
    })
  })

  test('a limit for CO in the flue comes with where it is printed', () => {
    const { flueCoLimitFrom, ...body } = bodyOf(ids.combustionTest)
    expect(flueCoLimitFrom).toBeDefined()
    expect(wrong('combustion test', body)).toEqual({
      flueCoLimitFrom: 'Say where the limit is printed: this unit’s manual and page.',
    })
  })

  test('oxygen above 20 % is room air, and CO below zero a meter that was not zeroed', () => {
    expect(wrong('combustion test', { ...bodyOf(ids.combustionTest), oxygenPercent: 20.1 })).toEqual({
      oxygenPercent: 'With more than 20 % oxygen the probe is in room air. Look where it sits.',
    })
    expect(wrong('combustion test', { ...bodyOf(ids.combustionTest), roomCoPpm: -1 })).toEqual({
      roomCoPpm: 'CO is never negative. Zero the meter outdoors.',
    })
  })
})

describe('lifting a notice', () => {
  test('names a notice', () => {
    expect(
      wrong('lifting', { ...bodyOf(ids.lifting), noticeId: ids.ending }, { records: sampleRecords }),
    ).toBe('a lifting lifts a notice')
  })
})

describe('taking back that a furnace was left off', () => {
  const leftOff = more(
    other.ending,
    'ending',
    { caseId: ids.case, visitId: ids.visit, how: 'left off' },
    '2026-02-04T08:00:00Z',
  )
  const anew = { ...leftOff, id: '01920000-0000-7000-8000-0000000000a6' }
  const over = { ...anew, body: { ...leftOff.body, how: 'no fault found' } }
  const newNotice = more(
    '01920000-0000-7000-8000-0000000000a7',
    'shut-down notice',
    bodyOf(ids.notice),
    '2026-02-04T08:00:00Z',
  )
  const elsewhereNotice = { ...newNotice, body: { ...newNotice.body, furnaceId: other.furnace } }
  const asked = (
    role: 'manager' | 'dispatcher' | 'technician',
    body: Record<string, unknown>,
    ...records: HeldRecord[]
  ) => {
    const file = foldTeamFile([...beforeEnding, ...elsewhere, leftOff, ...records])
    const saying = { id: 'person-1', role, saidAt: '2026-02-05T08:00:00.000Z' }
    const checked = checkRecord('withdrawal', { reason: 'Not so.', ...body }, file, saying)
    return checked.ok ? undefined : checked.refusal
  }

  test('a dispatcher may withdraw neither the notice nor the ending, and is told what to do instead', () => {
    for (const record of [ids.notice, leftOff.id])
      expect(asked('dispatcher', { record })).toEqual({
        rule: 'left off until it is lifted',
        sentence:
          'The furnace was left off, and a dispatcher may not let it run again. Ask a technician or a manager to lift the notice. Is something in it wrong? Write it anew: the new one takes its place.',
      })
  })

  test('a technician or a manager may, as they may lift it', () => {
    for (const role of ['technician', 'manager'] as const)
      for (const record of [ids.notice, leftOff.id]) expect(asked(role, { record })).toBeUndefined()
  })

  test('a dispatcher may where another one takes its place that leaves the furnace off as well', () => {
    expect(asked('dispatcher', { record: leftOff.id, replacedBy: anew.id }, anew)).toBeUndefined()
    expect(asked('dispatcher', { record: leftOff.id, replacedBy: over.id }, over)?.rule).toBe(
      'left off until it is lifted',
    )
    expect(asked('dispatcher', { record: ids.notice, replacedBy: newNotice.id }, newNotice)).toBeUndefined()
    for (const replacedBy of [ids.notice, ids.furnace])
      expect(asked('dispatcher', { record: ids.notice, replacedBy })?.rule).toBe(
        'left off until it is lifted',
      )
    expect(asked('dispatcher', { record: ids.notice, replacedBy: newNotice.id }, elsewhereNotice)?.rule).toBe(
      'left off until it is lifted',
    )
  })

  test('two that leave it off can’t take each other’s place: only a newer one counts', () => {
    expect(asked('dispatcher', { record: newNotice.id, replacedBy: ids.notice }, newNotice)?.rule).toBe(
      'left off until it is lifted',
    )
    expect(asked('dispatcher', { record: anew.id, replacedBy: leftOff.id }, anew)?.rule).toBe(
      'left off until it is lifted',
    )
  })

  test('any other ending, and what is no notice, anybody may withdraw', () => {
    expect(asked('dispatcher', { record: over.id }, over)).toBeUndefined()
    expect(asked('dispatcher', { record: ids.finding })).toBeUndefined()
  })
})

describe('what a record names is what it takes it for', () => {
  const rule = 'a switch has its position'
  test.each([
    ['reading', 'reading'],
    ['repair', 'caseRepair'],
    ['switch check', 'pumpCheck'],
    ['fitted part', 'fittedPart'],
  ] as const)('%s: the position is one', (kind, name) => {
    expect(wrong(kind, bodyOf(ids[name]))).toBeUndefined()
    expect(wrong(kind, { ...bodyOf(ids[name]), positionId: ids.maker })).toBe(rule)
  })

  const minimal = { caseId: ids.case, visitId: ids.visit, how: 'left off' }
  test('an ending names repairs of its case and a notice of its furnace', () => {
    expect(wrong('ending', { ...minimal, repairIds: [ids.caseRepair], noticeId: ids.notice })).toBeUndefined()
    for (const repairIds of [[ids.repair], [ids.caseRepair, ids.finding]])
      expect(wrong('ending', { ...minimal, repairIds })).toBe('an ending names its own repairs')
    const away = more(
      '01920000-0000-7000-8000-0000000000a8',
      'shut-down notice',
      { ...bodyOf(ids.notice), caseId: undefined, furnaceId: other.furnace },
      '2026-02-04T08:00:00Z',
    )
    const records = [...beforeEnding, ...elsewhere, away]
    for (const noticeId of [away.id, ids.finding])
      expect(wrong('ending', { ...minimal, noticeId }, { records })).toBe('an ending names its own notice')
  })

  test('a repair puts right what was found fitted in its furnace', () => {
    const body = { ...bodyOf(ids.foundFitted), furnaceId: ids.furnace }
    const here = more('01920000-0000-7000-8000-0000000000a9', 'found fitted', body, '2026-02-04T08:00:00Z')
    const away = { ...here, body: { ...body, furnaceId: other.furnace } }
    const putting = (found: HeldRecord) =>
      wrong(
        'repair',
        { ...bodyOf(ids.caseRepair), putsRight: found.id },
        { records: [...beforeEnding, ...elsewhere, found] },
      )
    expect(putting(here)).toBeUndefined()
    expect(putting(away)).toBe('it puts right what was found there')
    expect(wrong('repair', { ...bodyOf(ids.caseRepair), putsRight: ids.finding })).toBe(
      'it puts right what was found there',
    )
  })
})
