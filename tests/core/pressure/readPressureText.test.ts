import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  formatPressure,
  type PressureText,
  pressureUnits,
  type ReadPressureOptions,
  readPressureText,
  toPascals,
  ucumCode,
} from '@/lib/core/pressure'

const read = (text: string, options?: ReadPressureOptions): PressureText => {
  const result = readPressureText(text, options)
  if (!result.ok) throw new Error(`${text}: ${result.problem.code}, ${result.problem.message}`)
  return result.value
}
const codes = (text: string, options?: ReadPressureOptions) =>
  read(text, options).warnings.map((warning) => warning.code)
const problem = (text: string, options?: ReadPressureOptions) => {
  const result = readPressureText(text, options)
  return result.ok ? 'read' : result.problem.code
}
const inches = (value: number) => toPascals(value, 'inH2O')

// The forms are those that labels and people use: common practice, no published source.
describe('readPressureText reads the number as it is written', () => {
  test.each([
    ['.52', 0.52, 2],
    ['0.52', 0.52, 2],
    [',52', 0.52, 2],
    ['0,52', 0.52, 2],
    ['0,520', 0.52, 3],
    ['-.60', 0.6, 2],
    ['1.7', 1.7, 1],
    ['0.600', 0.6, 3],
    ['2', 2, 0],
    ['０．５２', 0.52, 2],
    ['－１．７０', 1.7, 2],
    ['5.2e-1', 0.52, 2],
  ])('%s is %d with %d decimals', (text, value, decimals) => {
    expect(read(text)).toMatchObject({ value, decimals, pascals: inches(value) })
  })

  test.each([
    ['1/2"', 0.5, 1],
    ['1 1/2"', 1.5, 1],
    ['1-1/2 in.', 1.5, 1],
    ['½"', 0.5, 1],
    ['1½ in. w.c.', 1.5, 1],
    ['3/8', 0.375, 3],
    ['5⁄16 in', 0.3125, 4],
    ['-1 1/4" WC', 1.25, 2],
  ])('%s is a fraction of inches: %d, exact with %d decimals', (text, value, decimals) => {
    expect(read(text)).toMatchObject({ value, decimals, unit: 'inH2O' })
  })

  test('commas and thin spaces group thousands only where nothing else can be meant', () => {
    expect(read('1,234.5 Pa').value).toBe(1234.5)
    expect(read('1\u2009700 Pa').value).toBe(1700)
    expect(read('1\u202f700 Pa').value).toBe(1700)
    expect(problem('1,700 Pa')).toBe('number-unclear')
    expect(problem('1 700 Pa')).toBe('several-numbers')
  })

  test('keeps the text letter for letter', () => {
    const text = '  --1.70″\u2009W.C.  PR\n'
    expect(read(text).asWritten).toBe(text)
  })
})

describe('readPressureText reads the unit', () => {
  test.each([
    ['0.52" WC', 'inH2O'],
    ['0.52"wc', 'inH2O'],
    ['0.52″ w.c.', 'inH2O'],
    ["0.52'' WC", 'inH2O'],
    ['0.52”', 'inH2O'],
    ['-0.52 in. w.c.', 'inH2O'],
    ['0.52INWC', 'inH2O'],
    ['0.52 IN. W.C.', 'inH2O'],
    ['0.52 in. w. c.', 'inH2O'],
    ['0.52in.w.c.', 'inH2O'],
    ['0.52 inH2O', 'inH2O'],
    ['0.52 in H₂O', 'inH2O'],
    ['0.52"w.g.', 'inH2O'],
    ['0.52 inches of water column', 'inH2O'],
    ['0.52 inches', 'inH2O'],
    ['0.52 WC', 'inH2O'],
    ['W.C. 0.52', 'inH2O'],
    ['W.C.0.52', 'inH2O'],
    ['0.52 MAX in. w.c.', 'inH2O'],
    ['0.52\u2009in.\u202fw.c.', 'inH2O'],
    ['13 mm H2O', 'mmH2O'],
    ['13mmH2O', 'mmH2O'],
    ['13 mm w.c.', 'mmH2O'],
    ['130 Pa', 'Pa'],
    ['130Pa', 'Pa'],
    ['130 PA.', 'Pa'],
    ['130 pascals', 'Pa'],
    ['1.3 mbar', 'mbar'],
    ['1.3 millibars', 'mbar'],
    ['1.3 hPa', 'hPa'],
    ['0.13 kPa', 'kPa'],
    ['0.04 inHg', 'inHg'],
    ['0.04 in. Hg', 'inHg'],
    ['0.04" of mercury', 'inHg'],
    ['0.02 psi', 'psi'],
    ['0.02 PSIG', 'psi'],
    ['0.02 lb/in²', 'psi'],
  ] as const)('%s is in %s', (text, unit) => {
    expect(read(text)).toMatchObject({ unit, unitStated: true })
  })

  test.each(pressureUnits)('the UCUM code of %s is read back as it', (unit) => {
    expect(read(`0.5 ${ucumCode[unit]}`)).toMatchObject({ value: 0.5, unit, unitStated: true })
  })

  test('a bare number is in inches of water, and the text is said not to state it', () => {
    expect(read('0.52')).toMatchObject({ unit: 'inH2O', unitStated: false })
  })

  test("a bare number is in the person's own unit if there is one", () => {
    expect(read('130', { ownUnit: 'Pa' })).toMatchObject({ pascals: 130, unit: 'Pa', unitStated: false })
    expect(read('1200', { ownUnit: 'Pa' }).pascals).toBe(1200)
    expect(read('0.52"', { ownUnit: 'Pa' })).toMatchObject({ unit: 'inH2O', unitStated: true })
  })

  test('a pair of quotation marks around a number is no inch mark', () => {
    expect(read('"-0.60"', { ownUnit: 'mbar' })).toMatchObject({ unit: 'mbar', unitStated: false })
  })

  test('W.C. glued to a number without a leading zero does not swallow its point', () => {
    expect(read('W.C..60').value).toBe(0.6)
    expect(read('W.C.60').value).toBe(0.6)
    expect(read('MAX.75').value).toBe(0.75)
  })

  // Pairs as printed in public installation manuals (sizes only): −0.55 in. w.c. (137 Pa), −1.50 ±0.10 (374 ±25 Pa).
  test('the same pressure in two units is one value, the first', () => {
    expect(read('-0.55 in. w.c. (137 Pa)')).toMatchObject({ value: 0.55, unit: 'inH2O', sense: 'suction' })
    expect(read('137 Pa / 0.55 in. w.c.')).toMatchObject({ value: 137, unit: 'Pa' })
    expect(read('-1.50 ±0.10 (374 ±25 Pa)')).toMatchObject({
      value: 1.5,
      unit: 'inH2O',
      unitStated: true,
      toleranceAbove: inches(0.1),
    })
  })

  // 248.84 Pa is the inch of water at 60 °F (NIST SP 811, App. B.8), 0.1 % below the conventional one.
  test('the same pressure by another definition of the inch is still the same', () => {
    expect(read('2.000 in. w.c. (497.68 Pa)').value).toBe(2)
    expect(problem('2.000 in. w.c. (495.00 Pa)')).toBe('contradicting-units')
  })
})

describe('readPressureText keeps magnitude and sense apart', () => {
  test.each([
    ['-0.85', 'suction'],
    ['−0.85', 'suction'],
    ['–0.85', 'suction'],
    ['- 0.85', 'suction'],
    ['0.85 suction', 'suction'],
    ['negative 0.85', 'suction'],
    ['minus 0.85', 'suction'],
    ['-0.85 negative pressure', 'suction'],
    ['+0.85', 'pressure'],
    ['positive 0.85', 'pressure'],
    ['0.85 in. w.c. pressure', 'pressure'],
    ['0.85', 'not stated'],
    ['PRESSURE SWITCH 0.85', 'not stated'],
    ['0.85 in. w.c. pressure drop', 'not stated'],
  ] as const)('%s: %s, magnitude 0.85', (text, sense) => {
    expect(read(text)).toMatchObject({ value: 0.85, pascals: inches(0.85), sense })
  })

  test('-0.85 is more suction than -0.70', () => {
    expect(read('-0.85').pascals).toBeGreaterThan(read('-0.70').pascals)
  })

  test('a dash between a word and a number is taken for a sign and asked about', () => {
    expect(read('CLOSE - 0.75')).toMatchObject({ sense: 'suction' })
    expect(codes('CLOSE - 0.75')).toEqual(['sign-unclear'])
    expect(codes('CLOSE-0.75')).toEqual(['sign-unclear'])
    expect(read('CLOSE – 0.75')).toMatchObject({ sense: 'not stated', warnings: [] })
  })

  test('a row of dashes is a leader, not a sign', () => {
    expect(read('CLOSE ----- 0.75')).toMatchObject({ sense: 'not stated' })
    expect(codes('CLOSE ----- 0.75')).toEqual(['sign-unclear'])
  })

  test('a sign and a word that disagree state nothing, and a warning says so', () => {
    expect(read('+0.60 suction')).toMatchObject({ value: 0.6, sense: 'not stated' })
    expect(codes('+0.60 suction')).toEqual(['contradicting-sense'])
    expect(codes('-0.60 positive')).toEqual(['contradicting-sense'])
  })

  test('zero has no sense and is never minus zero', () => {
    const zero = read('-0.00', { as: 'reading' })
    expect(zero.sense).toBe('not stated')
    expect(Object.is(zero.pascals, 0) && Object.is(zero.value, 0)).toBe(true)
  })
})

describe('readPressureText reads tolerances and limits', () => {
  test.each([
    ['0.52 ± 0.05', 0.05, 0.05],
    ['0.52±.03', 0.03, 0.03],
    ['0.52 +/- .05', 0.05, 0.05],
    ['0.52 plus or minus 0.05', 0.05, 0.05],
    ['0.52 tol. ±0.05', 0.05, 0.05],
    ['0.52 in. w.c. (±0.05 in. w.c.)', 0.05, 0.05],
    ['0.52 OPEN ±0.05', 0.05, 0.05],
    ['0.52 +0.00/-0.05', 0, 0.05],
    ['0.52 +0.00/−0.05', 0, 0.05],
    ['0.52 -0.05/+0.10', 0.1, 0.05],
    ['0.52 +0.10 -0.05', 0.1, 0.05],
    ['0.52 (+0.05, -0)', 0.05, 0],
    ['0.52±10%', 0.052, 0.052],
  ])('%s: %d above and %d below', (text, above, below) => {
    const { toleranceAbove, toleranceBelow, value, limit } = read(text)
    expect(value).toBe(0.52)
    expect(limit).toBe('nominal')
    expect(toleranceAbove).toBeCloseTo(inches(above), 9)
    expect(toleranceBelow).toBeCloseTo(inches(below), 9)
  })

  test("a tolerance has the value's unit unless it states its own", () => {
    expect(read('150 Pa ±12')).toMatchObject({ toleranceAbove: 12, toleranceBelow: 12 })
    expect(read('0.60 ±0.05 mbar')).toMatchObject({ unit: 'mbar', pascals: 60, toleranceAbove: 5 })
    expect(read('0.60 in. w.c. ±12 Pa')).toMatchObject({ unit: 'inH2O', toleranceAbove: 12 })
    expect(read('150 Pa +0.02/-0.05 in. w.c.')).toMatchObject({
      unit: 'Pa',
      toleranceAbove: inches(0.02),
      toleranceBelow: inches(0.05),
    })
  })

  test('without a tolerance there is none, and no limit kind is made up', () => {
    const plain = read('0.52')
    expect(plain).not.toHaveProperty('toleranceAbove')
    expect(plain).not.toHaveProperty('toleranceBelow')
    expect(plain).not.toHaveProperty('limit')
    expect(plain).not.toHaveProperty('action')
  })

  test.each([
    ['0.75 MAX', 'maximum'],
    ['MAX. 0.75', 'maximum'],
    ['0.75 maximum', 'maximum'],
    ['≤ 0.75', 'maximum'],
    ['not more than 0.75', 'maximum'],
    ['0.75 MIN', 'minimum'],
    ['at least 0.75', 'minimum'],
    ['0.75 NOM.', 'nominal'],
  ] as const)('%s is a %s', (text, limit) => {
    expect(read(text)).toMatchObject({ value: 0.75, limit })
  })

  test('an uneven tolerance on a signed number can be meant in two ways: read by size, and asked about', () => {
    expect(read('-0.70 +0.00/-0.05')).toMatchObject({ toleranceAbove: 0, toleranceBelow: inches(0.05) })
    expect(codes('-0.70 +0.00/-0.05')).toEqual(['tolerance-direction'])
    expect(codes('0.70 +0.00/-0.05')).toEqual([])
    expect(codes('-0.70 ±0.05')).toEqual([])
  })

  test('odd tolerances and limits are asked about', () => {
    expect(codes('0.52 ± 5')).toEqual(['tolerance-too-wide'])
    expect(codes('0.75 MAX ±0.05')).toEqual(['limit-and-tolerance'])
    expect(codes('0.75 MAX MIN')).toEqual(['limit-unclear'])
    expect(codes('0.52 ±0.05 ±0.10')).toEqual(['tolerance-left-out'])
    expect(read('0.75 MAX MIN')).not.toHaveProperty('limit')
  })
})

describe('readPressureText takes the action from plain words only', () => {
  test.each([
    ['CLOSE 0.75', 'closes'],
    ['closes at 0.75 in. w.c.', 'closes'],
    ['MAKE -0.75', 'closes'],
    ['0.75 make point', 'closes'],
    ['CLOSE0.75', 'closes'],
    ['OPEN 0.75', 'opens'],
    ['0.75 opens', 'opens'],
    ['break point 0.75', 'opens'],
    ['opens on low fire at 0.75', 'opens'],
  ] as const)('%s: %s', (text, action) => {
    expect(read(text)).toMatchObject({ value: 0.75, action })
  })

  test.each([
    'PR 0.60',
    'PF 0.60',
    'P.R. 0.60',
    'PF.60',
    '0.60 PR',
    'N.O. 0.60',
    'N.C. 0.60',
    'NO 0.60',
    'NC 0.60',
    'ON 0.60',
    'OFF 0.60',
    'normally open 0.60',
    'normally closed 0.60',
    'cut-in 0.60',
    '0.60 pressure rise',
    '0.60 on fall',
  ])('%s is not interpreted: it stays as written and is asked about', (text) => {
    const value = read(text)
    expect(value).not.toHaveProperty('action')
    expect(value).toMatchObject({ value: 0.6, asWritten: text })
    expect(value.warnings.map((warning) => warning.code)).toEqual(['abbreviation-not-decoded'])
  })

  test('a plain word beside an abbreviation still counts', () => {
    expect(read('OPEN PF 0.60')).toMatchObject({ action: 'opens' })
    expect(codes('OPEN PF 0.60')).toEqual(['abbreviation-not-decoded'])
  })

  test.each(['MAKE: ZANNIKO -0.60', 'OPEN COVER WITH CARE -0.60', 'OPEN/CLOSE -0.60'])(
    '%s does not say what the switch does',
    (text) => {
      expect(read(text)).not.toHaveProperty('action')
      expect(codes(text)).toEqual(['action-unclear'])
    },
  )

  test('"do not open" is no action', () => {
    expect(read('DO NOT OPEN -0.60')).not.toHaveProperty('action')
  })

  test('"no" in a sentence is not the contact N.O.', () => {
    expect(codes('no other rating 0.60')).toEqual([])
  })
})

describe('readPressureText takes no date code or catalogue number for a rating', () => {
  test.each([
    '0612',
    '060',
    '05',
    '1013-802',
    '06/12',
    '06-12-98',
    '12.06.98',
    'A0612',
    'HK-06',
    '50A51-243',
    '1208',
  ])('%s is refused as a code', (text) => {
    expect(problem(text)).toBe('looks-like-code')
  })

  test.each([
    '-0.60" WC 0612',
    '0612 -0.60" WC',
    '1013-802 -0.60" WC',
    'P/N 1013 -0.60" WC',
    'NO. 5 -0.60" WC',
    'HK06 -0.60" WC',
    '-0.60" WC 12.06.98',
    '24 VAC -0.60" WC',
    '-0.60" WC 24VAC',
  ])('%s: the rating is read, the rest is named as left out', (text) => {
    expect(read(text)).toMatchObject({ value: 0.6, sense: 'suction', unit: 'inH2O' })
    expect(codes(text)).toEqual(['number-left-out'])
  })

  test('a letter, mark or digit of another script glued to a number makes it none', () => {
    for (const text of ['O.60', '0.6O', '0.60x', '0.6²', '0.6٠', '0.60\u0336', '1_000', 'SW.60'])
      expect(problem(text)).toBe('looks-like-code')
  })

  test('a whole number that begins with zero is refused even with a unit: a point may be lost', () => {
    expect(problem('060 Pa')).toBe('number-unclear')
    expect(problem('1\u00a0013 Pa')).toBe('number-unclear')
  })

  test('a whole number with a unit is a pressure', () => {
    expect(read('1208 Pa').pascals).toBe(1208)
  })
})

describe('readPressureText says what is wrong', () => {
  test.each([
    ['', 'no-number'],
    ['   ', 'no-number'],
    ['sixty', 'no-number'],
    ['in. w.c.', 'no-number'],
    ['-', 'no-number'],
    ['.', 'no-number'],
    ['±0.05', 'no-number'],
    ['0.52 0.60', 'several-numbers'],
    ['0.55-0.65', 'several-numbers'],
    ['100-150 Pa', 'several-numbers'],
    ['0.60 MIN 0.75 MAX', 'several-numbers'],
    ['0.60 +0.05', 'several-numbers'],
    ['0.60 in. w.c. 2 in. w.c.', 'several-numbers'],
    ['CLOSE 0.75 OPEN 0.60', 'several-numbers'],
    ['0.52 Pa in. w.c.', 'contradicting-units'],
    ['Pa: 0.52 in. w.c.', 'contradicting-units'],
    ['0.55 in. w.c. (300 Pa)', 'contradicting-units'],
    ['NaN', 'not-finite'],
    ['Infinity', 'not-finite'],
    ['-Infinity Pa', 'not-finite'],
    ['∞', 'not-finite'],
    ['1e309', 'not-finite'],
    ['1e309 Pa', 'not-finite'],
    ['0.52 NaN', 'not-finite'],
    ['0.5.2', 'number-unclear'],
    ['0..52', 'number-unclear'],
    ['0,5,2', 'number-unclear'],
    ['1.234,5', 'number-unclear'],
    ['1/3 in', 'number-unclear'],
    ['1e-320 Pa', 'number-unclear'],
    ['1e300 psi', 'number-unclear'],
    [`0.${'0'.repeat(20)}1 Pa`, 'number-unclear'],
    ['24 VAC', 'unit-not-known'],
    ['0.6 MPa', 'unit-not-known'],
    ['0.60 mm', 'unit-not-known'],
    ['5 %', 'unit-not-known'],
    ['0', 'zero-is-no-rating'],
    ['-0.00 in. w.c.', 'zero-is-no-rating'],
    [`0.52 ${'x'.repeat(200)}`, 'too-long'],
  ])('%s: %s', (text, code) => {
    expect(problem(text)).toBe(code)
  })

  test('every problem has a sentence for the person who must act', () => {
    for (const text of [
      '',
      '0.52 0.60',
      '0.52 Pa in. w.c.',
      '1e309',
      '0.5.2',
      '24 V',
      '0',
      '0612',
      'x'.repeat(201),
    ]) {
      const result = readPressureText(text)
      expect(result.ok ? '' : result.problem.message).toMatch(/^[A-Z0-9].*\.$/)
    }
  })

  test('200 characters are read, 201 are not', () => {
    expect(read('0.52'.padEnd(200)).value).toBe(0.52)
    expect(problem('0.52'.padEnd(201))).toBe('too-long')
  })

  test("a person's own unit that is not known is the caller's mistake", () => {
    expect(() => readPressureText('1', { ownUnit: 'furlong' as 'Pa' })).toThrow(RangeError)
  })
})

describe('typical mistakes that the number itself shows', () => {
  test('misread decimal: 0.06 for 0.60 is named a tenth', () => {
    expect(codes('0.06')).toEqual(['a-tenth'])
    expect(read('0.06').warnings[0]?.message).toContain('0.6 in. w.c.')
  })

  test('misread decimal: 6.0 for 0.60 is named ten times', () => {
    expect(codes('6.0')).toContain('ten-times')
    expect(
      read('6.0')
        .warnings.map((warning) => warning.message)
        .join(),
    ).toContain('0.6 in. w.c.')
  })

  test('misread decimal: 060 without its point is not taken for a number', () => {
    expect(problem('060')).toBe('looks-like-code')
  })

  test('pascals entered as inches: 150', () => {
    expect(codes('150')).toEqual(['pascals-as-inches', 'confirm-value'])
    expect(codes('150 in. w.c.')).toEqual(['pascals-as-inches', 'confirm-value'])
  })

  test('inches entered as pascals: 0.60 Pa', () => {
    expect(codes('0.60 Pa')).toContain('inches-as-pascals')
    expect(codes('0.60', { ownUnit: 'Pa' })).toContain('inches-as-pascals')
  })

  test('millibars entered as inches: 4.2', () => {
    expect(codes('4.2 in. w.c.')).toContain('millibars-as-inches')
  })

  test('pascals entered as millibars: 150 mbar', () => {
    expect(codes('150 mbar')).toContain('pascals-as-millibars')
  })

  test('sign dropped: 0.60 on a suction switch is kept with its sense not stated, never made up', () => {
    expect(read('0.60')).toMatchObject({ sense: 'not stated', warnings: [] })
  })

  test('sign doubled: --1.70 is read once, as suction, and asked about', () => {
    expect(read('--1.70')).toMatchObject({ value: 1.7, sense: 'suction' })
    expect(codes('--1.70')).toEqual(['sign-doubled'])
    expect(codes('- -1.70')).toEqual(['sign-doubled'])
    expect(codes('−–1.70')).toEqual(['sign-doubled'])
  })

  test('gas manifold pressure entered as switch value: 3.5 and 10.0', () => {
    expect(codes('3.5')).toContain('manifold-pressure')
    expect(codes('10.0')).toContain('manifold-pressure')
    expect(codes('15')).not.toContain('manifold-pressure')
  })
})

describe('the size of a rating and of a reading', () => {
  test.each(['0.10', '3.0', '24.908891 Pa', '747.26 Pa', '0.25 mbar'])('a rating of %s is usual', (text) => {
    expect(codes(text)).toEqual([])
  })

  test.each(['0.09', '3.01', '24.9 Pa', '748 Pa'])('a rating of %s is warned about', (text) => {
    expect(codes(text)).not.toEqual([])
  })

  test('what no slip explains is still named as outside the usual range', () => {
    expect(codes('0.005')).toEqual(['outside-usual-range', 'confirm-value'])
  })

  test('a rating outside 5 to 2500 Pa asks for confirmation and is kept as written', () => {
    expect(codes('4.9 Pa')).toContain('confirm-value')
    expect(codes('5 Pa')).not.toContain('confirm-value')
    expect(codes('2500 Pa')).not.toContain('confirm-value')
    expect(codes('2501 Pa')).toContain('confirm-value')
    expect(read('2501 Pa').pascals).toBe(2501)
  })

  test('a reading is never refused for its size, zero included, and a low one is not doubted', () => {
    for (const text of ['0', '0.00 in. w.c.', '-0.00', '0 Pa', '0.01', '0.09'])
      expect(codes(text, { as: 'reading' })).toEqual([])
    for (const text of ['0.005 Pa', '9999 Pa', '150', '500 psi'])
      expect(codes(text, { as: 'reading' })).not.toContain('confirm-value')
  })

  test('a reading above the usual range still names the slip', () => {
    expect(codes('150', { as: 'reading' })).toEqual(['pascals-as-inches'])
  })
})

describe('readPressureText, for any text', () => {
  const seed = { seed: 20_260_114 }

  test('text to pascals to text in the same unit and decimals gives the same number', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 99_999_999 }),
        fc.integer({ min: 0, max: 8 }),
        fc.constantFrom(...pressureUnits),
        (digits, decimals, unit) => {
          const text = `${(digits / 10 ** decimals).toFixed(decimals)} ${ucumCode[unit]}`
          const value = read(text, { as: 'reading' })
          expect(value).toMatchObject({ unit, decimals, unitStated: true })
          const shown = formatPressure(value.pascals, value.unit, value.decimals)
          expect(shown.split(' ')[0]).toBe(text.split(' ')[0])
          expect(read(shown, { as: 'reading' })).toMatchObject({
            pascals: value.pascals,
            decimals,
            unit,
          })
        },
      ),
      { ...seed, numRuns: 1000 },
    )
  })

  test('spaces, case, full-width forms and kinds of minus make no difference', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 300 }),
        fc.constantFrom('-', '−', '‐', '‑', '‒', '–', '－', '﹣'),
        fc.constantFrom('', ' ', '\u2009', '\u00a0', '\u202f', '\t', '\u3000'),
        fc.constantFrom('in. w.c.', 'IN. W.C.', '"WC', 'inH2O', '"'),
        (hundredths, minus, space, unit) => {
          const number = (hundredths / 100).toFixed(2)
          const plain = read(`-${number} ${unit}`)
          const text = `${minus}${number}${space}${unit}`
          const wide = text.replace(/[!-~]/g, (c) => String.fromCharCode(c.charCodeAt(0) + 0xfee0))
          expect({ ...read(text), asWritten: '' }).toEqual({ ...plain, asWritten: '' })
          expect({ ...read(wide), asWritten: '' }).toEqual({ ...plain, asWritten: '' })
        },
      ),
      { ...seed, numRuns: 200 },
    )
  })

  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 220 }),
    fc.string({ unit: 'grapheme', maxLength: 60 }),
    fc.string({
      unit: fc.constantFrom(
        ...'0123456789.,-+±/ "\'eEnNaAinwchpPrfFoOmb%:;()|\n−–½²₂°#_𝟘😀',
        'OPEN',
        'CLOSE',
        'MAX',
        'in. w.c.',
        'Pa',
        '+/-',
        '0.60',
      ),
      maxLength: 60,
    }),
  )

  test('it answers with a sound value or a problem, and never throws', () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom('rating', 'reading'), (text, as) => {
        const result = readPressureText(text, { as })
        if (!result.ok) {
          expect(result.problem.code).toMatch(/^[a-z-]+$/)
          expect(result.problem.message.length).toBeGreaterThan(10)
          return
        }
        const {
          pascals,
          value,
          decimals,
          toleranceAbove = 0,
          toleranceBelow = 0,
          asWritten,
          warnings,
        } = result.value
        for (const number of [pascals, value, toleranceAbove, toleranceBelow])
          expect(Number.isFinite(number) && number >= 0 && !Object.is(number, -0)).toBe(true)
        expect(Number.isInteger(decimals) && decimals >= 0 && decimals <= 20).toBe(true)
        expect(asWritten).toBe(text)
        expect(as === 'reading' || value > 0).toBe(true)
        for (const warning of warnings) expect(warning.code).toMatch(/^[a-z-]+$/)
        expect(formatPressure(pascals, result.value.unit, decimals)).not.toContain('NaN')
      }),
      { ...seed, numRuns: 1500 },
    )
  })

  // Backtracking that doubles with each character would need years for any of these; the bound is generous. Processor time, since the machine may be busy.
  test.each(
    [
      '1',
      '1-',
      '1/',
      '.',
      ',',
      '1.',
      '1,',
      '+-',
      '- ',
      '"',
      '" ',
      'in. ',
      'w. ',
      'in',
      '±',
      '1 1/2',
      'e1',
      '\n',
      ' \n',
      '½',
    ]
      .flatMap((piece) => [piece, `${piece}x`])
      .map((piece) => [piece]),
  )('200 characters of %j take no time worth noticing', (piece) => {
    const text = piece.repeat(200).slice(0, 200)
    readPressureText(text)
    const start = process.cpuUsage().user
    for (let times = 0; times < 5; times++) readPressureText(text)
    const milliseconds = (process.cpuUsage().user - start) / 5 / 1000
    expect(milliseconds).toBeLessThan(50)
  })

  test('a frozen options object is left as it is', () => {
    const options = Object.freeze({ ownUnit: 'mbar', as: 'reading' } as const)
    expect(read('1.3', options).unit).toBe('mbar')
  })
})
