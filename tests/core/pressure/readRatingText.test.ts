import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PressureText, readRatingText, toPascals } from '@/lib/core/pressure'

const read = (text: string): PressureText[] => {
  const result = readRatingText(text)
  if (!result.ok) throw new Error(`${text}: ${result.problem.code}`)
  return result.value
}
const problem = (text: string) => {
  const result = readRatingText(text)
  return result.ok ? 'read' : result.problem.code
}
const inches = (value: number) => toPascals(value, 'inH2O')

// The forms are those that labels use: common practice, no published source.
describe('readRatingText', () => {
  test('CLOSE 0.75 MAX / OPEN 0.60 ±0.05 states two ratings', () => {
    const text = 'CLOSE 0.75 MAX / OPEN 0.60 ±0.05'
    const [closes, opens, ...more] = read(text)
    expect(more).toEqual([])
    expect(closes).toEqual({
      pascals: inches(0.75),
      sense: 'not stated',
      value: 0.75,
      unit: 'inH2O',
      unitStated: false,
      decimals: 2,
      action: 'closes',
      limit: 'maximum',
      warnings: [],
      asWritten: text,
    })
    expect(opens).toEqual({
      pascals: inches(0.6),
      sense: 'not stated',
      value: 0.6,
      unit: 'inH2O',
      unitStated: false,
      decimals: 2,
      action: 'opens',
      limit: 'nominal',
      toleranceAbove: inches(0.05),
      toleranceBelow: inches(0.05),
      warnings: [],
      asWritten: text,
    })
  })

  test.each([
    'MAKE 0.75 BREAK 0.60',
    'MAKE .75 / BREAK .60',
    'CLOSE: -0.75" WC\nOPEN: -0.60" WC',
    'CLOSES AT 0.75 IN. W.C., OPENS AT 0.60 IN. W.C.',
    '0.75 CLOSE 0.60 OPEN',
    '0.75 CLOSE, 0.60 OPEN',
    'CLOSE 0.75 in. w.c. (187 Pa) / OPEN 0.60 in. w.c. (149 Pa)',
    'CLOSE0.75/OPEN0.60',
    'close 0.75; open 0.60',
  ])('%s: closes at 0.75, opens at 0.60', (text) => {
    expect(read(text).map(({ action, value }) => [action, value])).toEqual([
      ['closes', 0.75],
      ['opens', 0.6],
    ])
  })

  test('OPEN 0.60 CLOSE 0.75 keeps the order of the label', () => {
    expect(read('OPEN 0.60 CLOSE 0.75').map(({ action }) => action)).toEqual(['opens', 'closes'])
  })

  test.each([
    ['CLOSE 0.75 MAX OPEN 0.60 MIN', 'maximum', 'minimum'],
    ['MAX CLOSE 0.75 MIN OPEN 0.60', 'maximum', 'minimum'],
    ['CLOSE MAX 0.75 / OPEN NOM 0.60', 'maximum', 'nominal'],
    ['MAX CLOSE 0.75 / OPEN 0.60', 'maximum', undefined],
    ['CLOSE 0.75 / OPEN 0.60 MIN', undefined, 'minimum'],
  ])('%s: limits stay with their own number', (text, first, second) => {
    const [closes, opens] = read(text)
    expect([closes?.action, closes?.limit]).toEqual(['closes', first])
    expect([opens?.action, opens?.limit]).toEqual(['opens', second])
  })

  test('one unit and one word of sense speak for the whole label', () => {
    for (const text of ['IN. W.C. CLOSE 0.75 OPEN 0.60', 'CLOSE 0.75 / OPEN 0.60 in. w.c.'])
      expect(read(text).map(({ unit, unitStated }) => [unit, unitStated])).toEqual([
        ['inH2O', true],
        ['inH2O', true],
      ])
    expect(read('SUCTION CLOSE 187 Pa OPEN 149').map(({ unit, sense }) => [unit, sense])).toEqual([
      ['Pa', 'suction'],
      ['Pa', 'suction'],
    ])
  })

  test('two units apart from the numbers speak for none', () => {
    expect(read('IN. W.C. (Pa) CLOSE 0.75 OPEN 0.60').map(({ unitStated }) => unitStated)).toEqual([
      false,
      false,
    ])
  })

  test('a sign speaks for its own number only', () => {
    expect(read('CLOSE -0.75 OPEN 0.60').map(({ sense }) => sense)).toEqual(['suction', 'not stated'])
  })

  test('two rows are paired in their order, and that is asked about', () => {
    const rows = read('CLOSE/OPEN 0.75/0.60')
    expect(rows.map(({ action, value }) => [action, value])).toEqual([
      ['closes', 0.75],
      ['opens', 0.6],
    ])
    expect(rows.map(({ warnings }) => warnings.map(({ code }) => code))).toEqual([
      ['paired-by-order'],
      ['paired-by-order'],
    ])
    expect(read('CLOSE/OPEN 187/149 Pa').map(({ pascals }) => pascals)).toEqual([187, 149])
  })

  test.each([
    'PR 0.75 PF 0.60',
    'PR0.75/PF0.60'.replaceAll(/([RF])/g, '$1 '),
    '0.75 PR / 0.60 PF',
    'N.O. 0.75 N.C. 0.60',
    'ON 0.75 OFF 0.60',
    'ON/OFF 0.75/0.60',
    '0.75 PRESSURE RISE / 0.60 PRESSURE FALL',
  ])('%s: two ratings whose abbreviations are kept and never interpreted', (text) => {
    const values = read(text)
    expect(values.map(({ value }) => value)).toEqual([0.75, 0.6])
    for (const value of values) {
      expect(value).not.toHaveProperty('action')
      expect(value.warnings.map(({ code }) => code)).toContain('abbreviation-not-decoded')
      expect(value.asWritten).toBe(text)
    }
  })

  test('one rating is a list of one', () => {
    expect(read('-0.60" WC')).toHaveLength(1)
    expect(read('OPEN 0.60 PR')[0]).toMatchObject({ action: 'opens' })
  })

  test.each([
    ['0.75 0.60', 'several-numbers'],
    ['0.75 / 0.60', 'several-numbers'],
    ['CLOSE 0.75 / 0.60', 'several-numbers'],
    ['CLOSE 0.75 CLOSE 0.80', 'several-numbers'],
    ['CLOSE 0.75 OPEN 0.60 CLOSE 0.50', 'several-numbers'],
    ['OPEN FRONT PANEL 0.75 CLOSE 0.60 OPEN', 'several-numbers'],
    ['0.75 MAX 0.60 MIN', 'several-numbers'],
    ['CLOSE 0.75 in. w.c. (100 Pa) OPEN 0.60', 'contradicting-units'],
    ['CLOSE 0.75 OPEN 0', 'zero-is-no-rating'],
    ['CLOSE OPEN', 'no-number'],
  ])('%s is refused: %s', (text, code) => {
    expect(problem(text)).toBe(code)
  })

  test('break taken for make: a lone number keeps its action open, a named one keeps its name', () => {
    expect(read('0.60')[0]).not.toHaveProperty('action')
    expect(read('BREAK 0.60')[0]).toMatchObject({ action: 'opens' })
  })

  test('any close and open values on a label come back as they were written', () => {
    const hundredths = fc.integer({ min: 10, max: 300 })
    const layouts = [
      (c: string, o: string) => `CLOSE ${c} MAX / OPEN ${o} ±0.05`,
      (c: string, o: string) => `MAKE -${c}" WC  BREAK -${o}" WC`,
      (c: string, o: string) => `${c} IN. W.C. CLOSE | ${o} IN. W.C. OPEN | 0612`,
      (c: string, o: string) => `closes at ${c}, opens at ${o} in. w.c.`,
    ]
    fc.assert(
      fc.property(hundredths, hundredths, fc.constantFrom(...layouts), (close, open, layout) => {
        const [c, o] = [(close / 100).toFixed(2), (open / 100).toFixed(2)]
        expect(read(layout(c, o)).map(({ action, value }) => [action, value])).toEqual([
          ['closes', close / 100],
          ['opens', open / 100],
        ])
      }),
      { seed: 7, numRuns: 200 },
    )
  })

  test('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 220 }), (text) => {
        const result = readRatingText(text)
        expect(result.ok ? result.value.length : 1).toBeGreaterThan(0)
      }),
      { seed: 8, numRuns: 300 },
    )
  })
})
