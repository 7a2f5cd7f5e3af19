import Ajv from 'ajv/dist/2020'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { unitOfField } from '@/lib/records/fieldUnits'
import { numberFields } from '@/lib/records/numberFields'
import { documentSchema } from '@/lib/server/exchange/documentSchema'
import {
  exported,
  fill,
  fillDispute,
  peopleOf,
  record,
  rowsOf,
  say,
  takenIn,
  verified,
  withServers,
} from './twoServers'

const { newServer } = withServers()

type Document = {
  version: number
  head: { seq: number; hash: string }
  entries: { seq: number; withheldBySeq: number | null; salt: string | null; record: { body: object } }[]
  ratings: {
    action: string
    level: string
    sources: { source: string; saidAt: string }[]
    pascals: number
    unit: string
    rivals: { pascals: number; sources: { source: string }[] }[]
  }[]
}
const parse = (text: string) => JSON.parse(text) as Document

test('importLog(exportLog(log)) into an empty server gives the same entries, salts and hashes, and the chain verifies', async () => {
  const old = await newServer()
  await fill(old)
  const text = exported(old)
  const fresh = await newServer()
  const taken = await takenIn(fresh, text)
  const { head } = parse(text)
  expect(taken).toMatchObject({
    ok: true,
    value: { entries: head.seq, headHash: head.hash, withheld: 2, people: { added: 1, known: 0 } },
  })
  expect(rowsOf(fresh)).toEqual(rowsOf(old))
  const [before, after] = [await verified(old), await verified(fresh)]
  expect(after).toEqual(before)
  expect(after.trouble).toBeUndefined()
  expect(after.headHash).toBe(head.hash)
  expect(after.withheld).toHaveLength(2)
})

test('importLog keeps what was withheld withheld: neither its text nor its salt is in the document or the database', async () => {
  const old = await newServer()
  const secret = 'Behind the blue door of the widow Hallam'
  const furnace = record(old.managerId, 'furnace', {
    siteLabel: secret,
    model: 'ZQ-80',
    fuel: 'natural gas',
  })
  await say(old, [furnace])
  const reason = 'It named a customer.'
  await say(old, [
    record(old.managerId, 'withholding', { record: furnace.id, fields: ['siteLabel'], reason }),
  ])
  const text = exported(old)
  expect(text).not.toContain(secret)
  expect(parse(text).entries[0]).toMatchObject({ salt: null, withheldBySeq: 2 })
  const fresh = await newServer()
  expect(await takenIn(fresh, text)).toMatchObject({ ok: true })
  expect(JSON.stringify(rowsOf(fresh))).not.toContain(secret)
  expect(rowsOf(fresh)[0]).toMatchObject({ salt: null, withheldBySeq: 2 })
})

test('importLog adds the authors under their old ids, inactive, and gives a name that is taken a word behind it', async () => {
  const old = await newServer()
  await fill(old)
  const fresh = await newServer()
  await takenIn(fresh, exported(old))
  expect(peopleOf(fresh)).toEqual([
    { id: fresh.managerId, name: 'Mara Otell', role: 'manager', active: true },
    { id: old.managerId, name: 'Mara Otell (taken over)', role: 'manager', active: false },
  ])
})

test('importLog reads the same document written anew by another program, with other line ends and blanks', async () => {
  const old = await newServer()
  await fill(old)
  const fresh = await newServer()
  const anew = JSON.stringify(JSON.parse(exported(old)), undefined, 2).replaceAll('\n', '\r\n')
  expect(await takenIn(fresh, anew)).toMatchObject({ ok: true })
  expect(rowsOf(fresh)).toEqual(rowsOf(old))
})

test('importLog takes in a document of version 1, in which the sources of other values were words alone, and refuses a version that is to come', async () => {
  const old = await newServer()
  await fillDispute(old)
  const document = parse(exported(old))
  expect(document.version).toBe(2)
  const ratings = document.ratings.map((rating) => ({
    ...rating,
    rivals: rating.rivals.map((rival) => ({ ...rival, sources: rival.sources.map(({ source }) => source) })),
  }))
  expect(ratings[0]?.rivals[0]?.sources).toEqual(['distributor', 'older literature'])
  const fresh = await newServer()
  expect(await takenIn(fresh, JSON.stringify({ ...document, version: 1, ratings }))).toMatchObject({
    ok: true,
  })
  expect(rowsOf(fresh)).toEqual(rowsOf(old))
  expect(await takenIn(await newServer(), JSON.stringify({ ...document, version: 3 }))).toMatchObject({
    ok: false,
    problem: { code: 'newer-document', message: expect.stringContaining('Update this server') },
  })
  const fits = new Ajv({ strict: false, validateFormats: false }).compile(documentSchema())
  expect(fits({ ...document, version: 1, ratings })).toBe(false)
  expect(fits({ ...document, version: 1 })).toBe(false)
})

test('importLog takes an empty log into an empty server', async () => {
  const old = await newServer()
  const fresh = await newServer()
  expect(await takenIn(fresh, exported(old))).toMatchObject({ ok: true, value: { entries: 0, withheld: 0 } })
})

test('importLog refuses a server that has records, and says what to do instead', async () => {
  const old = await newServer()
  await fill(old)
  const other = await newServer()
  await say(other, [record(other.managerId, 'maker', { name: 'Orrinmoor' })])
  const before = rowsOf(other)
  expect(await takenIn(other, exported(old))).toMatchObject({
    ok: false,
    problem: { code: 'log-not-empty', message: expect.stringContaining('Start a new server') },
  })
  expect(rowsOf(other)).toEqual(before)
})

/** What can be wrong with one entry of a document, and what the refusal says of it. */
const damages: [what: string, damage: (text: string) => string, says: RegExp][] = [
  [
    'a field of a record changed',
    (text) => text.replace('"ZQ-80"', '"ZQ-81"'),
    /^Entry 2 does not fit: .*changed/,
  ],
  [
    'a salt changed',
    (text) => text.replace(/"salt":"(.)/, (_, one) => `"salt":"${one === '0' ? '1' : '0'}`),
    /^Entry 1 does not fit: .*changed/,
  ],
  [
    'a time changed',
    (text) => text.replace(/"clockShiftMs":-?\d+/, '"clockShiftMs":77'),
    /^Entry 1 does not fit: its hash/,
  ],
  [
    'an entry left out',
    (text) => text.replace(/\{"seq":2,.*\n/, ''),
    /^Entry 2 does not fit: its number is 3/,
  ],
  [
    'an entry twice',
    (text) => text.replace(/(\{"seq":2,.*\n)/, '$1$1'),
    /^Entry 3 does not fit: its number is 2/,
  ],
  [
    'a line that is no JSON',
    (text) => text.replace('\n{"seq":3,', '\n{"seq":3;'),
    /^Entry 3 does not fit: its line/,
  ],
  [
    'an unknown field',
    (text) => text.replace('{"seq":2,', '{"seq":2,"more":1,'),
    /^Entry 2 does not fit: .*“more”/,
  ],
  [
    'cut off within an entry',
    (text) => text.slice(0, text.indexOf('\n{"seq":3,') + 40),
    /^Entry 3 does not fit: its line/,
  ],
  [
    'cut off between two entries',
    (text) => text.slice(0, text.indexOf('\n{"seq":3,') + 1),
    /^Entry 3 does not fit: the file breaks off/,
  ],
  [
    'the last entry taken away',
    (text) => text.replace(/,\n\{"seq":3,.*\n/, '\n'),
    /ends with entry 3.*another one, 2/,
  ],
  [
    'a kind of a newer program',
    (text) => text.replace('"kind":"maker"', '"kind":"sonnet"'),
    /^Entry 1 does not fit/,
  ],
]

test.each(damages)(
  'importLog names the entry that does not fit, and takes nothing in: %s',
  async (_, damage, says) => {
    const old = await newServer()
    await say(old, [
      record(old.managerId, 'maker', { name: 'Orrinmoor' }),
      record(old.managerId, 'furnace', { siteLabel: 'Mill Lane 4', model: 'ZQ-80', fuel: 'natural gas' }),
      record(old.managerId, 'maker', { name: 'Wexhollow' }),
    ])
    const text = exported(old)
    const damaged = damage(text)
    expect(damaged).not.toBe(text)
    const fresh = await newServer()
    const taken = await takenIn(fresh, damaged)
    expect(taken).toMatchObject({ ok: false, problem: { message: expect.stringMatching(says) } })
    if (!taken.ok) expect(taken.problem.message).toContain('Nothing was taken in')
    expect(rowsOf(fresh)).toEqual([])
    expect(peopleOf(fresh)).toHaveLength(1)
  },
)

test('importLog holds rule 2 on its own road: a chain forged around a report read off a generic switch is refused', async () => {
  const old = await newServer()
  const { forgeWithGenericSwitch } = await import('./forge')
  const fresh = await newServer()
  expect(await takenIn(fresh, forgeWithGenericSwitch(old.managerId))).toMatchObject({
    ok: false,
    problem: {
      message: expect.stringMatching(
        /^Entry 5 does not fit: A number read off an adjustable or general-purpose/,
      ),
    },
  })
  expect(rowsOf(fresh)).toEqual([])
})

test('importLog answers any text with a sentence and takes nothing in', async () => {
  const fresh = await newServer()
  const old = await newServer()
  await say(old, [record(old.managerId, 'maker', { name: 'Orrinmoor' })])
  const text = exported(old)
  const cut = fc.nat(text.length - 2).map((end) => text.slice(0, end))
  const swapped = fc
    .tuple(fc.nat(text.length - 3), fc.string())
    .map(([at, other]) => text.slice(0, at) + other + text.slice(at + 1))
  await fc.assert(
    fc.asyncProperty(fc.oneof(fc.string(), fc.json(), cut), async (any) => {
      const taken = await takenIn(fresh, any)
      expect(taken.ok || taken.problem.message).toMatch(/^[A-Z].*\.$/s)
      expect(rowsOf(fresh)).toEqual([])
    }),
    { numRuns: 60 },
  )
  await fc.assert(
    fc.asyncProperty(swapped, async (any) => {
      const taken = await takenIn(old, any)
      expect(taken.ok || taken.problem.message).toMatch(/^[A-Z].*\.$/s)
    }),
    { numRuns: 60 },
  )
})

test('exportLog gives every rating with its level, its sources and their dates, in pascals by UCUM', async () => {
  const old = await newServer()
  await fillDispute(old)
  const { ratings } = parse(exported(old))
  expect(ratings.length).toBeGreaterThan(0)
  for (const { level, sources, pascals, unit } of ratings) {
    expect(level).toMatch(/^(Verified|Supported|Unverified|In dispute)$/)
    expect(sources.length).toBeGreaterThan(0)
    for (const { saidAt } of sources) expect(saidAt).toMatch(/^\d{4}-\d\d-\d\d/)
    expect(pascals).toBeGreaterThanOrEqual(0)
    expect(unit).toBe('Pa')
  }
})

test('exportLog gives every other value with its sources and their dates, and the schema asks for them', async () => {
  const old = await newServer()
  await fillDispute(old)
  const document = parse(exported(old))
  const [rating] = document.ratings
  const holdsFor = 'any elevation, any revision, any serial'
  const from = (source: string, words: string, saidAt: string) => ({
    reportId: expect.any(String),
    source,
    words,
    saidAt,
    holdsFor,
  })
  expect(rating?.rivals).toEqual([
    {
      pascals: 162,
      sources: [
        from('distributor', 'Distributor, Hallam Supply, ref. T-1', '2024-03-01'),
        from('older literature', 'Maker’s literature, older, ZQ 3, page 7', '2019-05-06'),
      ],
    },
  ])
  const fits = new Ajv({ strict: false, validateFormats: false }).compile(documentSchema())
  expect([fits(document), fits.errors]).toEqual([true, null])
  for (const sources of [[], ['distributor']])
    expect(fits({ ...document, ratings: [{ ...rating, rivals: [{ pascals: 162, sources }] }] })).toBe(false)
})

test('exportLog gives no number that depends on the furnace, but what it needs, and the schema has it so', async () => {
  const old = await newServer()
  const page = { kind: 'document', name: 'ZQ 14', page: '3' }
  await fillDispute(old, [
    { action: 'opens', source: 'current literature', proof: page, elevationBand: { toMetres: 1200 } },
  ])
  const document = parse(exported(old))
  const opens = document.ratings.find(({ action }) => action === 'opens')
  expect(opens).toEqual({
    positionId: expect.any(String),
    maker: 'Orrinmoor',
    range: 'OM Ridge',
    models: ['OMR-80'],
    position: 'Low fire',
    action: 'opens',
    inDisputeFor: [],
    needs: ['elevation'],
  })
  const fits = new Ajv({ strict: false, validateFormats: false }).compile(documentSchema())
  expect([fits(document), fits.errors]).toEqual([true, null])
  expect(fits({ ...document, ratings: [{ ...opens, pascals: 150 }] })).toBe(false)
})

test('documentSchema() is a JSON Schema that the document with every kind of record fits, and a spoiled one does not', async () => {
  const old = await newServer()
  await fill(old)
  const document = parse(exported(old))
  const fits = new Ajv({ strict: false, validateFormats: false }).compile(documentSchema())
  expect([fits(document), fits.errors]).toEqual([true, null])
  const { entries } = document
  expect(fits({ ...document, entries: [{ ...entries[0], seq: 'one' }] })).toBe(false)
  const body = { ...entries[0]!.record.body, surprise: 1 }
  expect(fits({ ...document, entries: [{ ...entries[0], record: { ...entries[0]!.record, body } }] })).toBe(
    false,
  )
})

test('every number in a record has a unit by UCUM', () => {
  expect(numberFields().filter((field) => unitOfField(field) === undefined)).toEqual([])
  expect(unitOfField('toleranceAbove')).toBe('Pa')
  expect(unitOfField('elevationMetres')).toBe('m')
  expect(unitOfField('flueCoPpm')).toBe('[ppm]')
})
