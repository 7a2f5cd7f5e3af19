import fc from 'fast-check'
import Papa from 'papaparse'
import { expect, test } from 'vitest'
import {
  decode,
  encodings,
  fieldsOf,
  guessColumns,
  guessDateOrder,
  guessDecimals,
  guessEncoding,
  isWorkbook,
  readTable,
  separators,
  unitsInHeads,
} from '@/lib/records/oldList'
import { readDay } from '@/lib/records/oldList/dates'
import { withPoints } from '@/lib/records/oldList/decimals'
import { readRow } from '@/lib/records/oldList/readRow'
import { now, planOf, readingOf, tableOf } from './someList'

const bytesOf = (...bytes: number[]) => new Uint8Array(bytes)
const utf8 = (text: string) => new TextEncoder().encode(text)

/** “Größe ±0,65 é”, byte by byte: the code charts of Unicode 15 and the windows-1252 index of the Encoding Standard. */
const latin = bytesOf(0x47, 0x72, 0xf6, 0xdf, 0x65, 0x20, 0xb1, 0x30, 0x2c, 0x36, 0x35, 0x20, 0xe9)
const written = 'Größe ±0,65 é'
const little = Uint8Array.from([...written].flatMap((one) => [one.charCodeAt(0), 0]))
const big = Uint8Array.from([...written].flatMap((one) => [0, one.charCodeAt(0)]))

test.each([
  ['utf-8 without its mark', 'utf-8', utf8(written)],
  ['utf-8 with its mark EF BB BF', 'utf-8', bytesOf(0xef, 0xbb, 0xbf, ...utf8(written))],
  ['utf-16le with its mark FF FE', 'utf-16le', bytesOf(0xff, 0xfe, ...little)],
  ['utf-16le without its mark', 'utf-16le', little],
  ['utf-16be with its mark FE FF', 'utf-16be', bytesOf(0xfe, 0xff, ...big)],
  ['utf-16be without its mark', 'utf-16be', big],
  ['windows-1252', 'windows-1252', latin],
] as const)('guessEncoding and decode read %s, and leave no mark in the text', (_, encoding, bytes) => {
  expect(guessEncoding(bytes)).toBe(encoding)
  expect(decode(bytes, encoding)).toBe(written)
})

test('guessEncoding takes plain letters for utf-8, and an empty file too', () => {
  expect(guessEncoding(utf8('maker,model\nA,B'))).toBe('utf-8')
  expect(guessEncoding(new Uint8Array())).toBe('utf-8')
})

test.each([
  ['comma', 'maker,make\nOrrinmoor,0.65\nWexhollow,0.70'],
  ['semicolon', 'maker;make\nOrrinmoor;0,65\nWexhollow;0,70'],
  ['tab', 'maker\tmake\nOrrinmoor\t0,65\nWexhollow\t0,70'],
] as const)('readTable guesses a %s between the cells', (separator, text) => {
  expect(readTable(text)).toMatchObject({ ok: true, value: { separator, head: ['maker', 'make'] } })
})

test('readTable takes the separator that the person chose', () => {
  expect(tableOf('a;b,c\n1;2,3', 'comma').head).toEqual(['a;b', 'c'])
})

test('readTable counts rows as a spreadsheet does: empty ones too, and one with a line end in a cell once', () => {
  const { rows } = tableOf('maker,note\n\nOrrinmoor,"two\nlines"\n,\nWexhollow,x\n')
  expect(rows.map(({ row }) => row)).toEqual([3, 5])
})

test('readTable says of a quotation mark that is never closed where it is', () => {
  expect(tableOf('maker,note\nOrrinmoor,"open\nWexhollow,x\n').oddities).toEqual([
    expect.stringContaining('row 2'),
  ])
})

test.each([
  ['', 'empty-file'],
  ['\n \n', 'empty-file'],
  ['maker,make', 'no-rows'],
])('readTable(%j) answers with a sentence that says what to do', (text, code) => {
  expect(readTable(text)).toMatchObject({
    ok: false,
    problem: { code, message: expect.stringMatching(/\.$/) },
  })
})

test('readTable(unparse(rows)) gives the rows back, whatever their texts and the separator', () => {
  const cell = fc.string({ unit: 'grapheme' }).map((text) => text.trim())
  const rows = fc
    .integer({ min: 2, max: 6 })
    .chain((width) =>
      fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 12 }),
    )
  fc.assert(
    fc.property(rows, fc.constantFrom('comma', 'semicolon', 'tab', 'bar'), (cells, separator) => {
      const head = cells[0]!.map((_, at) => `column ${at}`)
      const text = Papa.unparse([head, ...cells], { delimiter: separators[separator] })
      const read = readTable(text, separator)
      const filled = cells.filter((row) => row.some((one) => one !== ''))
      expect(read.ok ? read.value.rows.map((row) => row.cells) : []).toEqual(filled)
    }),
  )
})

test('a file of any bytes gives a table or a sentence, in every encoding, and its rows get verdicts: nothing throws', () => {
  const head = utf8('maker,range,position,make,unit,date,elevation to,note\n')
  const bytes = fc.oneof(
    fc.uint8Array({ maxLength: 400 }),
    fc.uint8Array({ maxLength: 400 }).map((some) => Uint8Array.from([...head, ...some])),
    fc.string().map((text) => Uint8Array.from([...head, ...utf8(`Orrinmoor,OM Ridge,Low fire,${text}`)])),
  )
  fc.assert(
    fc.property(bytes, fc.constantFrom(...encodings), (some, encoding) => {
      expect(encodings).toContain(guessEncoding(some))
      const text = decode(some, encoding)
      const read = readTable(text)
      if (!read.ok) {
        expect(read.problem.message).toMatch(/^[A-Z].*[.?]$/s)
        return
      }
      for (const verdict of planOf(text).verdicts)
        if ('sentence' in verdict) expect(verdict.sentence).toMatch(/[.?]$/)
    }),
    { numRuns: 300 },
  )
})

test('guessDecimals goes by the numbers that can be read in one way only', () => {
  expect(guessDecimals(['0,65', '1,250'])).toBe('comma')
  expect(guessDecimals(['0.65', '1.250'])).toBe('point')
  expect(guessDecimals(['1,250', '2,500'])).toBe('not known')
  expect(guessDecimals(['0,65', '0.65'])).toBe('not known')
  expect(guessDecimals(['1.234,5'])).toBe('comma')
  expect(guessDecimals(['65', 'PR'])).toBe('not known')
})

test.each([
  ['0,65 ±0,05', 'comma', '0.65 ±0.05'],
  ['1.234,5 Pa', 'comma', '1234.5 Pa'],
  ['1.250', 'comma', '1250'],
  ['0.65', 'comma', '0.65'],
  ['0.125', 'comma', '0.125'],
  ['1,250', 'point', '1250'],
  ['0.65', 'point', '0.65'],
  ['1,250', 'not known', '1,250'],
] as const)('withPoints(%j, %j) is %j', (text, sign, points) => {
  expect(withPoints(text, sign)).toBe(points)
})

test.each([
  ['2019-04-03', 'not known', '2019-04-03'],
  ['2019-04-03T08:00', 'not known', '2019-04-03'],
  ['3.4.2019', 'day first', '2019-04-03'],
  ['3/4/2019', 'month first', '2019-03-04'],
  ['25/4/19', 'not known', '2019-04-25'],
  ['4/25/98', 'not known', '1998-04-25'],
  ['5/5/2019', 'not known', '2019-05-05'],
] as const)('readDay(%j, %j) is %j', (text, order, day) => {
  expect(readDay(text, order)).toEqual({ day })
})

test.each(['3/4/2019', '31.2.2019', 'spring', '2019'])('readDay(%j) is not guessed', (text) => {
  expect(readDay(text, 'not known')).toEqual({ why: expect.stringMatching(/\.$/) })
})

test('guessDateOrder goes by the days above twelve, and by points between the numbers', () => {
  expect(guessDateOrder(['3/4/2019', '25/4/2019'])).toBe('day first')
  expect(guessDateOrder(['4/25/2019'])).toBe('month first')
  expect(guessDateOrder(['3/4/2019'])).toBe('not known')
  expect(guessDateOrder(['3.4.2019'])).toBe('day first')
})

test('guessColumns goes by the words above and by what stands below: “Make” above names is the maker', () => {
  const guessed = (text: string) => {
    const table = tableOf(text)
    return Object.fromEntries(
      Object.entries(guessColumns(table)).map(([field, at]) => [field, table.head[at!]]),
    )
  }
  expect(
    guessed(
      'Make,Model No.,Stage,Close (in wc),Open (in wc),Part #,Source,Date\nOrrinmoor,OMR-80A,Low fire,0.65,0.50,KX-1,counter,2019-04-03',
    ),
  ).toEqual({
    maker: 'Make',
    model: 'Model No.',
    position: 'Stage',
    make: 'Close (in wc)',
    break: 'Open (in wc)',
    partNumber: 'Part #',
    source: 'Source',
    date: 'Date',
  })
  expect(guessed('Brand;Series;Switch;Make;Remarks\nOrrinmoor;Ridge;Low;-0,65;old')).toEqual({
    maker: 'Brand',
    range: 'Series',
    position: 'Switch',
    make: 'Make',
    note: 'Remarks',
  })
  expect(guessed('who,what\nOrrinmoor,0.65 in. w.c.')).toEqual({ rating: 'what' })
})

/** The only row of a list, read. */
function only(text: string, parts: Parameters<typeof readingOf>[1] = {}) {
  const table = tableOf(text)
  const reading = readingOf(table, parts)
  const row = fieldsOf(table.rows[0]!, reading.columns)
  return readRow(row, reading, unitsInHeads(table, reading.columns), now)
}

test('readRow reads a make and a break point with the unit of their heads, suction from the sign, letter for letter', () => {
  // 0.65 × 249.08891 Pa = 161.9078 Pa, 0.50 × 249.08891 = 124.5445 (NIST SP 811, App. B.8)
  const read = only('maker;model;close (in. w.c.);open (in. w.c.)\nOrrinmoor;OMR-80A;-0,65 ±0,05;-0,50')
  expect(read).toMatchObject({
    ok: true,
    value: {
      values: [
        { action: 'closes', asWritten: '-0,65 ±0,05', sense: 'suction', unit: 'inH2O', decimals: 2 },
        { action: 'opens', asWritten: '-0,50', sense: 'suction', unit: 'inH2O', decimals: 2 },
      ],
      backing: { source: 'imported' },
      coverage: {},
    },
  })
  const [make, opens] = read.ok ? read.value.values : []
  expect(make!.pascals).toBeCloseTo(161.9078, 3)
  expect(make!.toleranceAbove).toBeCloseTo(12.4544, 3)
  expect(opens!.pascals).toBeCloseTo(124.5445, 3)
})

test('readRow takes the unit of the row before that of the head and that of the list', () => {
  const units = (text: string, unit: 'Pa' | '' = '') => {
    const read = only(text, { unit })
    return read.ok ? read.value.values[0]!.unit : read.problem.code
  }
  expect(units('maker,make,unit\nO,150,Pa')).toBe('Pa')
  expect(units('maker,make (mbar),unit\nO,1.5,')).toBe('mbar')
  expect(units('maker,make\nO,150', 'Pa')).toBe('Pa')
  expect(units('maker,make\nO,0.65 in. w.c.', 'Pa')).toBe('inH2O')
  expect(units('maker,make\nO,0.65')).toBe('unit')
  expect(units('maker,make,unit\nO,0.65,furlong')).toBe('unit')
})

test('readRow fills nothing in: a rating without a word is neither closing nor opening, and letters are not decoded', () => {
  const read = only('maker,rating\nO,PR 0.65 in. w.c.')
  expect(read).toMatchObject({ ok: true, value: { values: [{ action: 'not stated', sense: 'not stated' }] } })
})

test('readRow refuses a cell that says the opposite of its column', () => {
  const read = only('maker,make\nO,0.65 in. w.c. open', { columns: { maker: 0, make: 1 } })
  expect(read).toMatchObject({ ok: false, problem: { code: 'action' } })
})

test.each([
  ['a document with page and day', 'manual', 'ZQ 12', '7', '', '', '2019-04-03', 'older literature'],
  [
    'one that our own word calls current',
    'Current literature',
    'ZQ 12',
    '7',
    '',
    '',
    '2019-04-03',
    'current literature',
  ],
  [
    'one that the list calls current in its words',
    'Current manual',
    'ZQ 12',
    '7',
    '',
    '',
    '2019-04-03',
    'older literature',
  ],
  [
    'one of which it says what it is not',
    'manual, not current',
    'ZQ 12',
    '7',
    '',
    '',
    '2019-04-03',
    'imported',
  ],
  ['a document without a page', 'manual', 'ZQ 12', '', '', '', '2019-04-03', 'imported'],
  ['a document without a day', 'manual', 'ZQ 12', '7', '', '', '', 'imported'],
  [
    'a call with its reference',
    'distributor counter',
    '',
    '',
    'Hallam Supply',
    'T-77',
    '2019-04-03',
    'distributor',
  ],
  [
    'factory support with its reference',
    'factory support',
    '',
    '',
    'Orrinmoor line',
    'T-78',
    '2019-04-03',
    'factory support',
  ],
  [
    "the maker's own line in other words",
    'Maker’s technical help desk',
    '',
    '',
    'Orrinmoor line',
    'T-78',
    '2019-04-03',
    'factory support',
  ],
  [
    "somebody's support, not said whose",
    'tech support',
    '',
    '',
    'Hallam Supply',
    'T-78',
    '2019-04-03',
    'imported',
  ],
  [
    'the support of a distributor',
    'Distributor tech support',
    '',
    '',
    'Hallam Supply',
    'T-78',
    '2019-04-03',
    'distributor',
  ],
  [
    'the support of a distributor of the factory',
    'factory line of a supplier',
    '',
    '',
    'Hallam Supply',
    'T-78',
    '2019-04-03',
    'distributor',
  ],
  [
    'factory support and what it is not',
    'not factory support',
    '',
    '',
    'Hallam Supply',
    'T-78',
    '2019-04-03',
    'imported',
  ],
  [
    'two sources with both proofs',
    'distributor, from the manual',
    'ZQ 12',
    '7',
    'Hallam Supply',
    'T-78',
    '2019-04-03',
    'imported',
  ],
  ['a call without a reference', 'distributor', '', '', 'Hallam Supply', '', '2019-04-03', 'imported'],
  [
    'a label, of which a list holds no photo',
    'factory switch label',
    'ZQ 12',
    '7',
    '',
    '',
    '2019-04-03',
    'imported',
  ],
  ['memory', 'remembered', '', '', '', '', '', 'imported'],
])('readRow: what the row rests on is %s', (_, source, document, page, who, reference, date, rests) => {
  const read = only(
    `maker,make (Pa),source,document,page,who rung,reference,date\nO,160,${[`"${source}"`, document, page, who, reference, date].join(',')}`,
  )
  expect(read.ok && read.value.backing.source).toBe(rests)
  if (rests === 'imported' && read.ok) expect(read.value.note).toContain(source)
})

test.each([
  'not from the manual',
  'manual missing, from memory',
  'no manual',
  'without the bulletin',
  'wasn’t in the instructions',
  'hand-written sheet',
  'note on a sheet in the van',
  'own spreadsheet',
  'spread sheet',
  'photo of data plate, sheet 3',
  'label; see document',
  'remembered from the instructions',
  'forum document',
  'catalogue of the distributor',
  'counter-checked by Ede',
  'counter checked by Ede',
  'encountered twice',
  'Ede, who used to work at a supplier',
])('readRow trusts no source where the list says “%s”, whatever proof stands beside it', (source) => {
  const read = only(
    `maker,make (Pa),source,document,page,who rung,reference,date\nO,160,"${source}",ZQ 12,7,Hallam Supply,T-77,2019-04-03`,
  )
  expect(read).toMatchObject({ ok: true, value: { backing: { source: 'imported' } } })
  if (read.ok) expect(read.value.note).toContain(`The list names as its source: ${source}.`)
})

test.each([
  ['data sheet 7', 'older literature'],
  ['Datasheet', 'older literature'],
  ['wiring sheets', 'older literature'],
  ['Parts counter', 'distributor'],
  ['over-the-counter call', 'distributor'],
])('readRow knows “%s” as %s', (source, rests) => {
  const read = only(
    `maker,make (Pa),source,document,page,who rung,reference,date\nO,160,"${source}",ZQ 12,7,Hallam Supply,T-77,2019-04-03`,
  )
  expect(read).toMatchObject({ ok: true, value: { backing: { source: rests } } })
})

test('readRow takes a row for some furnaces only if it says so, in feet and metres', () => {
  const coverage = (head: string, cells: string) => {
    const read = only(`maker,make (Pa),${head}\nO,160,${cells}`)
    return read.ok ? read.value.coverage : read.problem.code
  }
  expect(coverage('holds for', 'all')).toEqual({ revisionRange: {}, serialRange: {}, elevationBand: {} })
  expect(coverage('holds for', '')).toEqual({})
  // 4500 ft × 0.3048 m = 1371.6 m (NIST SP 811, App. B.8)
  expect(coverage('elevation to', '4500 ft')).toEqual({
    revisionRange: {},
    serialRange: {},
    elevationBand: { toMetres: 1372 },
  })
  expect(coverage('elevation to', '4500')).toBe('elevation')
  expect(coverage('serial from,serial to', 'A100,A200')).toMatchObject({
    serialRange: { from: 'A100', to: 'A200' },
  })
})

test('readRow refuses a day that lies ahead', () => {
  expect(only('maker,make (Pa),date\nO,160,2031-01-01')).toMatchObject({
    ok: false,
    problem: { code: 'date' },
  })
})

test('isWorkbook(bytes) knows a zip archive and a compound file by how they begin, and no text', () => {
  expect(isWorkbook(bytesOf(0x50, 0x4b, 0x03, 0x04, 0x14, 0x00))).toBe(true)
  expect(isWorkbook(bytesOf(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0x00))).toBe(true)
  for (const text of ['PK,make\nA,1', 'maker,make', '']) expect(isWorkbook(utf8(text))).toBe(false)
})

test('guessColumns takes a column of tolerances for what it is, and for no make point', () => {
  const columns = (name: string) => guessColumns(tableOf(`maker,make,${name}\nOrrinmoor,0.65,0.05`))
  for (const name of ['Tolerance', 'Make tolerance', 'tol.', '±', '+/-', '+/- in wc'])
    expect([name, columns(name)]).toEqual([name, { maker: 0, make: 1, tolerance: 2 }])
})
