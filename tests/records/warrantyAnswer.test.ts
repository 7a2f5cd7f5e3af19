import { describe, expect, test } from 'vitest'
import { checkRecord } from '@/lib/records/checkRecord'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'
import { sampleIds as ids, sampleRecords } from './samples'

const file = foldTeamFile(sampleRecords)
const { body } = sampleRecords.find(({ kind }) => kind === 'warranty answer')!
const check = (more: Record<string, unknown>, role: 'dispatcher' | 'technician' = 'dispatcher') =>
  checkRecord('warranty answer', JSON.parse(JSON.stringify({ ...body, ...more })), file, {
    id: 'person-1',
    role,
    saidAt: '2026-03-20T08:00:00.000Z',
  })
const refusalOf = (more: Record<string, unknown>) => {
  const checked = check(more)
  return checked.ok ? undefined : checked
}

describe('a warranty answer', () => {
  test('is taken from the desk, with an amount or without, from an organisation or in words', () => {
    expect(check({}).ok).toBe(true)
    expect(check({ amountMinorUnits: undefined, currency: undefined }).ok).toBe(true)
    expect(check({ organisationId: undefined }).ok).toBe(true)
    expect(check({ answeredBy: undefined }).ok).toBe(true)
    expect(check({}, 'technician').ok).toBe(false)
  })

  test('an amount has its currency, a whole number of the smallest unit, and three letters', () => {
    for (const wrong of [
      { amountMinorUnits: undefined },
      { currency: undefined },
      { amountMinorUnits: 1.5 },
      { amountMinorUnits: -1 },
      { currency: 'usd' },
      { currency: '$' },
    ])
      expect(refusalOf(wrong), JSON.stringify(wrong)).toBeDefined()
  })

  test('it is somebody’s answer', () => {
    expect(JSON.stringify(refusalOf({ organisationId: undefined, answeredBy: undefined }))).toContain(
      'Say whose answer it is',
    )
  })

  test('it is about a repair that fitted a part, and names an organisation as one', () => {
    expect(refusalOf({ repairId: ids.case })?.refusal?.rule).toBe(
      'a warranty answer is about a part that was replaced',
    )
    const bare = { kind: 'repair', body: { done: 'Cleared the trap' } }
    const lookup = Object.assign(() => bare, { endedAt: () => undefined, keptId: (id: string) => id })
    const saying = { id: 'person-1', role: 'dispatcher', saidAt: '2026-03-20T08:00:00.000Z' } as const
    expect(recordKinds['warranty answer']!.refusedBy!(body, lookup, saying)?.sentence).toContain(
      'fitted no part',
    )
    expect(refusalOf({ organisationId: ids.maker })?.refusal?.rule).toBe(
      'an organisation answers a warranty claim',
    )
  })

  test('it stands in the team file, and its words about people can be withheld', () => {
    expect(file.warrantyAnswers.get(ids.warrantyAnswer)?.body.outcome).toBe('denied')
    const withheld = foldTeamFile(
      sampleRecords.map((record) =>
        record.id === ids.warrantyAnswer
          ? {
              ...record,
              body: { ...record.body, answeredBy: '[withheld]' },
              withheld: { by: 'x', fields: ['answeredBy'] },
            }
          : record,
      ),
    )
    expect(withheld.warrantyAnswers.get(ids.warrantyAnswer)?.withheld?.fields).toEqual(['answeredBy'])
  })
})
