import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { batchAnswers, changesPage, heldRecord, person } from '@/lib/device/answers'
import { batchAnswer } from '@/lib/records/answer'
import { recordEnvelope } from '@/lib/records/envelope'
import { sampleRecords } from '../records/samples'

const fields = ['id', 'outcome', 'seq', 'rule', 'sentence', 'ids', 'surprise']
const outcomes = ['stored', 'already stored', 'refused', 'waiting for', 'lost']
const someValue = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, 0, 7, 1.5, Number.MAX_VALUE, true, 'a', ['a'], [1], {}),
  fc.constantFrom(...outcomes),
)
/** Answers of every outcome as the server writes them, and then spoiled in one field or none. */
const someAnswer = fc
  .record({
    whole: fc.constantFrom<Record<string, unknown>>(
      { id: 'a', outcome: 'stored', seq: 3 },
      { id: 'a', outcome: 'already stored', seq: 3 },
      { id: 'a', outcome: 'refused', rule: 'a rule', sentence: 'Why.' },
      { id: 'a', outcome: 'waiting for', ids: ['b', 'c'] },
    ),
    spoiled: fc.option(fc.tuple(fc.constantFrom(...fields), someValue), { nil: undefined }),
  })
  .map(({ whole, spoiled }) => (spoiled === undefined ? whole : { ...whole, [spoiled[0]]: spoiled[1] }))

describe('what the server answers, read on the device', () => {
  test('a batch’s answers are read as the server’s own schema reads them, and refused as it refuses them', () => {
    fc.assert(
      fc.property(fc.oneof(fc.array(someAnswer), someValue), (answers) => {
        const ours = batchAnswers.safeParse({ answers })
        const theirs = batchAnswer.safeParse({ answers })
        expect(ours.success).toBe(theirs.success)
        if (ours.success) expect(ours.data).toEqual(theirs.data)
      }),
    )
  })

  test('every kind of record is read as it is, withheld or not', () => {
    for (const record of sampleRecords) {
      expect(heldRecord.safeParse(record)).toEqual({ success: true, data: record })
      const withheld = { ...record, withheld: { by: record.id, fields: ['note'] } }
      expect(heldRecord.safeParse(withheld)).toEqual({ success: true, data: withheld })
    }
  })

  test('a record that lacks a field, or has one that this program does not know, is refused with its page', () => {
    const [record] = sampleRecords
    for (const field of [...Object.keys(recordEnvelope.shape), 'seq', 'receivedAt', 'clockShiftMs']) {
      const lacking = Object.fromEntries(Object.entries(record!).filter(([name]) => name !== field))
      const page = { records: [record, lacking], next: 2, more: false }
      expect(changesPage.safeParse(page), field).toEqual({ success: false })
    }
    const page = { records: [{ ...record, surprise: 1 }], next: 1, more: false }
    expect(changesPage.safeParse(page)).toEqual({ success: false })
  })

  test('a page of changes is read with and without what may be left out, and without what nobody knows', () => {
    const bare = { records: [sampleRecords[0]!], next: 1, more: true }
    expect(changesPage.safeParse(bare)).toEqual({ success: true, data: bare })
    const pictures = { news: [{ sha256: 'a', held: false }], next: 4, anew: true }
    const full = { ...bare, pictures, mark: 'm', anew: true }
    expect(changesPage.safeParse({ ...full, surprise: 1 })).toEqual({ success: true, data: full })
    for (const spoiled of [
      { anew: false },
      { mark: 7 },
      { pictures: { next: 4 } },
      { next: 1.5 },
      { more: 'no' },
    ])
      expect(changesPage.safeParse({ ...full, ...spoiled }), JSON.stringify(spoiled)).toEqual({
        success: false,
      })
  })

  test('a person has an id, a name and one of the three roles', () => {
    const me = { id: 'person-1', name: 'Ines Talvik', role: 'technician' }
    expect(person.safeParse({ ...me, surprise: 1 })).toEqual({ success: true, data: me })
    for (const spoiled of [null, 'Ines', [me], {}, { ...me, role: 'owner' }, { ...me, name: 7 }])
      expect(person.safeParse(spoiled)).toEqual({ success: false })
  })
})
