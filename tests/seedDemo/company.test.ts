import { describe, expect, test } from 'vitest'
import { fromPascals, readRatingText } from '@/lib/core/pressure'
import { recordEnvelope } from '@/lib/records/envelope'
import type { ReportBody } from '@/lib/records/kinds/report'
import { recordKinds } from '@/lib/records/registry'
import { demoDay, firstDay } from '@/seed-demo/book'
import { positions, ranges } from '@/seed-demo/catalogue'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { makers } from '@/seed-demo/makers'
import { branches, distributors } from '@/seed-demo/names'
import { demoPeople } from '@/seed-demo/people'
import { families } from '@/seed-demo/ranges'
import { isOwnNumber, trueRating } from '@/seed-demo/ratings'
import { companyOf } from './companies'

// What is checked here are the demo's own promises; it states nothing that a publication could be held against.

const { records } = companyOf(demoSeed)
const ofKind = (kind: string) => records.filter((record) => record.kind === kind)
const people = new Map(Object.values(demoPeople).map((person) => [person.id, person]))

describe('demoRecords(seed)', () => {
  test('one seed gives one company, to the letter; another seed gives another', () => {
    expect(JSON.stringify(demoRecords(demoSeed))).toBe(JSON.stringify(records))
    expect(JSON.stringify(companyOf(1).records)).not.toBe(JSON.stringify(records))
  })

  test('it holds 60 ranges, 90 positions and 200 reports, whatever the seed', () => {
    for (const seed of [demoSeed, 1, 2]) {
      const count = (kind: string) => companyOf(seed).records.filter((record) => record.kind === kind).length
      expect([count('equipment range'), count('position'), count('report')]).toEqual([60, 90, 200])
    }
  })

  test('it holds every kind of record there is, but those that need somebody’s file: a picture or an old list', () => {
    const fromFiles = ['photo', 'import', 'imported lines']
    const others = Object.keys(recordKinds).filter((kind) => !fromFiles.includes(kind))
    expect(new Set(records.map(({ kind }) => kind))).toEqual(new Set(others))
  })

  test('every record fits its envelope and its schema, and no rule refuses it', () => {
    const stored = new Map<string, (typeof records)[number]>()
    const endedAt = new Map<string, string>()
    const lookup = Object.assign((id: string) => stored.get(id), {
      endedAt: (visitId: string) => endedAt.get(visitId),
      keptId: (id: string) => id,
    })
    for (const record of records) {
      expect(recordEnvelope.safeParse(record)).toMatchObject({ success: true })
      const kind = recordKinds[record.kind]!
      expect(kind.versions[record.version]!.safeParse(record.body), record.kind).toMatchObject({
        success: true,
      })
      const author = people.get(record.author)!
      expect(kind.mayAdd).toContain(author.role)
      expect(kind.refusedBy?.(record.body, lookup, { ...author, saidAt: record.saidAt })).toBeUndefined()
      for (const id of kind.refersTo(record.body))
        expect(stored.has(id), `${record.kind} names ${id}`).toBe(true)
      stored.set(record.id, record)
      const { visitId } = record.body
      if (record.kind === 'ending' && typeof visitId === 'string' && !endedAt.has(visitId))
        endedAt.set(visitId, record.saidAt)
    }
    expect(stored.size).toBe(records.length)
  })

  test('records come in the order in which they were said, within the four years, each id made at its moment', () => {
    const moments = records.map(({ saidAt }) => Date.parse(saidAt))
    expect(moments).toEqual(moments.toSorted((one, other) => one - other))
    expect(records[0]!.saidAt >= firstDay).toBe(true)
    expect(records.at(-1)!.saidAt.slice(0, 10) <= demoDay).toBe(true)
    const madeAt = records.map(({ id }) => Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16))
    expect(madeAt).toEqual(moments)
  })

  test('the two numbers of one label are said in the same second or two, in the order of its words', () => {
    const labels = ofKind('report').filter(({ body }) => body.source === 'factory switch label')
    const closes = labels.filter(({ body }) => body.action === 'closes' && body.kind !== 'opens on rise')
    expect(closes.length).toBeGreaterThan(10)
    for (const close of closes) {
      const after = records[records.indexOf(close) + 1]!
      expect(after.body).toMatchObject({ action: 'opens', asWritten: close.body.asWritten })
      expect(Date.parse(after.saidAt) - Date.parse(close.saidAt)).toBeLessThan(2000)
    }
  })

  test('a report’s number is the one in the words that it keeps', () => {
    for (const { body } of ofKind('report')) {
      const { asWritten, pascals, action } = body as ReportBody
      const read = readRatingText(asWritten)
      const values = read.ok ? read.value : []
      const said = values.find((value) => value.pascals === pascals)
      expect(said, asWritten).toBeDefined()
      expect(said!.action ?? action).toBe(action)
    }
  })
})

describe('the demo’s numbers', () => {
  const truths = positions.flatMap((position) =>
    makers[position.range.maker].bands.map((_, band) => ({
      position,
      band,
      ...trueRating(position, band, 0),
    })),
  )
  const air = truths.filter(({ position }) => position.place !== 'Low gas pressure')

  test('air switches are set between 0.2 and 2.2 in. w.c., off the 0.05 grid where printed examples stand', () => {
    for (const { make, break: opens, position } of air) {
      for (const hundredths of [make, opens]) {
        expect(hundredths, position.key).toBeGreaterThanOrEqual(20)
        expect(hundredths).toBeLessThanOrEqual(220)
        expect(isOwnNumber(hundredths), `${position.key} ${hundredths}`).toBe(true)
      }
    }
  })

  test('the break is the smaller number, but for a switch that opens on rise', () => {
    for (const { make, break: opens, tolerance, opensOnRise = false, position } of truths) {
      expect(opens > make, position.key).toBe(opensOnRise)
      expect(Math.abs(make - opens)).toBeGreaterThan(tolerance)
    }
  })

  test('a higher band is set lower, and high fire higher than low fire', () => {
    for (const { position, band, make } of air) {
      if (band > 0) expect(make, position.key).toBeLessThan(trueRating(position, band - 1, 0).make)
      if (position.place.startsWith('High fire')) {
        const low = air.find(
          (other) =>
            other.position.range === position.range &&
            other.band === band &&
            other.position.place.startsWith('Low fire'),
        )!
        expect(make).toBeGreaterThan(low.make)
      }
    }
  })

  test('a band or a revision range that the maker does not have is refused', () => {
    const position = positions.find(({ key }) => key === 'Gable 070 / Single stage')!
    expect(() => trueRating(position, 1, 0)).toThrow('Gable 070 has no elevation band 1')
    expect(() => trueRating(position, 0, 1)).toThrow('or no revision range 1')
  })

  test.each([demoSeed, 1, 2])('0.94, 0.80 and 1.10 in. w.c. are nobody’s rating, with seed %i', (seed) => {
    const bodies = companyOf(seed).records.flatMap(({ kind, body }) =>
      kind === 'report' || kind === 'settlement' ? [body as ReportBody] : [],
    )
    const told = new Set(bodies.map(({ pascals }) => fromPascals(pascals, 'inH2O').toFixed(2)))
    for (const barred of ['0.94', '0.80', '1.10']) expect(told).not.toContain(barred)
  })
})

describe('the demo’s names come from the invented lists', () => {
  test('makers, ranges and model numbers', () => {
    expect(ofKind('maker').map(({ body }) => body.name)).toEqual(
      Object.values(makers).map(({ name }) => name),
    )
    const known = families.map(({ name }) => name as string)
    for (const { body } of ofKind('equipment range'))
      expect(known).toContain(String(body.name).replace(/ \d{3}$/, ''))
    for (const { family, size } of ranges)
      expect(family.patterns(size).some((pattern) => matches(pattern, family.printed(size)))).toBe(true)
  })

  test('branches, and who is rung', () => {
    for (const { body } of ofKind('furnace')) {
      const { elevationMetres: of } = branches[body.branch as keyof typeof branches]
      if (body.elevationMetres !== undefined)
        expect(Math.abs(Number(body.elevationMetres) - of)).toBeLessThan(50)
    }
    const rung = [
      ...Object.values(distributors),
      ...Object.values(makers).map((maker) => maker.technicalLine),
    ]
    for (const { body } of ofKind('report')) {
      const { proof } = body as ReportBody
      if (proof?.kind === 'call reference') expect(rung).toContain(proof.organisation)
    }
  })

  test('one manager, two dispatchers and four technicians said all of it, and none was silent', () => {
    expect(new Set(records.map(({ author }) => author))).toEqual(new Set(people.keys()))
    const roleCount = (role: string) => [...people.values()].filter((person) => person.role === role).length
    expect([roleCount('manager'), roleCount('dispatcher'), roleCount('technician')]).toEqual([1, 2, 4])
  })
})

/** Whether a model number fits a pattern: an asterisk for any characters, a question mark for one. */
const matches = (pattern: string, model: string): boolean =>
  new RegExp(
    `^${pattern.replace(/[.*+?^${}()|[\]\\/]/g, (sign) => (sign === '*' ? '.*' : sign === '?' ? '.' : `\\${sign}`))}$`,
  ).test(model)
