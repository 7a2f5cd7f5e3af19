import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkRecord } from '@/lib/records/checkRecord'
import { dayToCome, dayToComeSentence } from '@/lib/records/dayToCome'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'
import { sampleRecords } from './samples'

/** Days that are still to come when they are said, or may be. */
const mayCome: Readonly<Record<string, readonly string[]>> = {
  ending: ['followUpOn'],
  gauge: ['calibrationDue'],
  supersession: ['on'],
}

/** The fields of a kind's newest sample that hold a day. */
const daysIn = (kind: string): string[] => [
  ...new Set(
    sampleRecords
      .filter((record) => record.kind === kind)
      .flatMap(({ body }) => Object.entries(body))
      .filter(([, value]) => typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value))
      .map(([field]) => field),
  ),
]

describe('the day of what happened', () => {
  test.each(Object.keys(recordKinds))('%s: each day is of what happened, or may come', (kind) => {
    const happened = recordKinds[kind]!.happenedOn ?? []
    expect(daysIn(kind).filter((field) => !happened.includes(field))).toEqual(
      daysIn(kind).filter((field) => mayCome[kind]?.includes(field)),
    )
  })

  test('is today or earlier wherever on Earth it is said, and never two days ahead', () => {
    const kind = { happenedOn: ['on'] }
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2020-01-01'), max: new Date('2040-01-01'), noInvalidDate: true }),
        fc.integer({ min: -12, max: 14 }),
        fc.integer({ min: 0, max: 400 }),
        (moment, hoursAhead, daysAgo) => {
          const dayAt = (shiftMs: number) => new Date(moment.getTime() + shiftMs).toISOString().slice(0, 10)
          const here = hoursAhead * 3_600_000
          const dayMs = 24 * 3_600_000
          const saidAt = moment.toISOString()
          expect(dayToCome(kind, { on: dayAt(here - daysAgo * dayMs) }, saidAt)).toBeUndefined()
          expect(dayToCome(kind, { on: dayAt(14 * 3_600_000 + dayMs) }, saidAt)).toBe('on')
        },
      ),
    )
  })

  test('is refused at its own field before it is sent', () => {
    const visit = sampleRecords.findLast(({ kind }) => kind === 'visit')!
    const file = foldTeamFile(sampleRecords)
    const saying = { id: visit.author, role: 'technician' as const, saidAt: '2026-02-01T10:00:00Z' }
    const checked = checkRecord('visit', { ...visit.body, on: '2030-01-01' }, file, saying)
    expect(checked).toEqual({ ok: false, fields: { on: dayToComeSentence } })
  })
})
