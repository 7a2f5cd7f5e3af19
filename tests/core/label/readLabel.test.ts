import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { agreeing, confidenceLimit, type LabelLine, readLabel } from '@/lib/core/label'
import { lookAlikeDigits } from '@/lib/core/label/lookAlikeDigits'

const onFile = ['OM-7710', 'SM 228/31', 'T-40-122', '61Q.2219']
const line = (text: string, confidence = 92): LabelLine =>
  text.split(' ').map((word) => ({ text: word, confidence }))
const read = (...lines: string[]) =>
  readLabel(
    lines.map((text) => line(text)),
    onFile,
  )
const values = (...lines: string[]) =>
  read(...lines).values.map(({ text, offered, pressures }) => ({
    text,
    offered,
    says: pressures.map(({ action, value, unit }) => `${action ?? 'not stated'} ${value} ${unit}`),
  }))
const parts = (...lines: string[]) =>
  read(...lines).parts.map(({ text, offered, onFile, near }) => ({ text, offered, onFile, near }))

describe('readLabel(lines, partNumbersOnFile), the ratings', () => {
  test('a number with a unit is offered, letter for letter; abbreviations are not decoded', () => {
    expect(values('P/N 1013-802', 'PF .64 IN WC', 'S/N 00421 28 VDC')).toEqual([
      { text: 'PF .64 IN WC', offered: true, says: ['not stated 0.64 inH2O'] },
    ])
  })

  test('close and open below each other are one rating, and a number below its word belongs to it', () => {
    expect(values('CLOSE .62 ±.05 WC', 'OPEN .48 WC')[0]).toMatchObject({
      offered: true,
      says: ['closes 0.62 inH2O', 'opens 0.48 inH2O'],
    })
    expect(values('AIR SWITCH', 'CLOSE', '-1.42 IN WC')[0]).toMatchObject({
      text: 'CLOSE / -1.42 IN WC',
      says: ['closes 1.42 inH2O'],
    })
    expect(values('130 PA CLOSES', 'OPENS AT 110 Pa')[0]?.says).toEqual(['closes 130 Pa', 'opens 110 Pa'])
  })

  test.each(['PF 64 IN WC', 'CLOSE 120 IN WC', 'SET 2 IN WC', '064 IN WC', 'PF 6.4" WC', '.052 IN WC'])(
    'a lost or misplaced decimal point is caught: %s is shown with the reason and never offered',
    (text) => {
      const [value] = read(text).values
      expect(value?.offered).toBe(false)
      expect(value?.why.join(' ')).toMatch(/decimal point/)
      expect(value?.text).toBe(text)
    },
  )

  test('a whole number of pascals has no point to lose', () => {
    expect(values('CLOSES 130 Pa')[0]).toMatchObject({ offered: true })
  })

  test('a rating whose point is lost is never offered, whatever it is and whatever stands beside it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 199 }),
        fc.constantFrom('IN WC', '" WC', 'IN. W.C.', 'mbar'),
        fc.constantFrom('PF', 'CLOSE', 'SET', 'OPEN AT'),
        (hundredths, unit, word) => {
          expect(read(`${word} ${hundredths} ${unit}`).values.filter(({ offered }) => offered)).toEqual([])
        },
      ),
    )
  })

  test('letters that look like digits and a ± that lost its stroke are put right, and said to be', () => {
    const [value] = read('SET O.6S +.05 IN WC').values
    expect(value).toMatchObject({ text: 'SET 0.65 ±.05 IN WC', offered: true })
    expect(value?.why.join(' ')).toContain('“O.6S” was taken for 0.65. “+.05” was taken for ±.05.')
    expect(read('SET .65 +.05 -.00 IN WC').values[0]?.text).not.toContain('±')
  })

  test('below the confidence limit nothing is offered', () => {
    const unsure = line('PF .64 IN WC', confidenceLimit - 1)
    expect(readLabel([unsure], []).values[0]).toMatchObject({ offered: false, text: 'PF .64 IN WC' })
    expect(readLabel([line('PF .64 IN WC', confidenceLimit)], []).values[0]?.offered).toBe(true)
  })

  test('serial numbers, dates, voltages and model numbers are no ratings', () => {
    expect(
      values('S/N 00421 28 VDC', 'DATE 12.04.21', 'MODEL LF2-080-B', '24 VAC 5 A', 'LOT 875609'),
    ).toEqual([])
  })
})

describe('readLabel(lines, partNumbersOnFile), the part numbers', () => {
  test('what stands behind P/N and its like is offered, on file or not', () => {
    expect(parts('P/N 1013-802')).toEqual([{ text: '1013-802', offered: true, onFile: [], near: [] }])
    expect(parts('PART NO. SM 228/31 REV B')[0]).toMatchObject({ text: 'SM 228/31', onFile: ['SM 228/31'] })
    expect(parts('P/N: OM-7710 S/N 00421')[0]).toMatchObject({ text: 'OM-7710', offered: true })
  })

  test('a number on file is known without any word before it, with look-alikes, and kept as it was read', () => {
    expect(parts('T-40-I22')).toEqual([{ text: 'T-40-I22', offered: true, onFile: ['T-40-122'], near: [] }])
    expect(parts('ORRINMOOR', 'SM 228/31')[0]).toMatchObject({ text: 'SM 228/31', onFile: ['SM 228/31'] })
  })

  test('a number one digit off one on file is never replaced by it, and says that it is near', () => {
    expect(parts('P/N OM-7711')[0]).toMatchObject({ text: 'OM-7711', onFile: [], near: ['OM-7710'] })
  })

  test('a number that nothing speaks for is shown and not offered', () => {
    expect(parts('KX61479B')).toEqual([{ text: 'KX61479B', offered: false, onFile: [], near: [] }])
  })

  test('serial numbers, dates, voltages and pressures are no part numbers', () => {
    expect(parts('S/N 00421 28 VDC', 'DATE 8283', '.64 IN WC', '24 VAC', '2026-01-12')).toEqual([])
  })
})

test('readLabel(lines, …) never throws, changes nothing that it is given, and invents no word', () => {
  const words = fc.record({
    text: fc.string({ minLength: 1, maxLength: 12 }),
    confidence: fc.integer({ min: 0, max: 100 }),
  })
  fc.assert(
    fc.property(fc.array(fc.array(words, { maxLength: 6 }), { maxLength: 6 }), (lines) => {
      const frozen = lines.map((each) => Object.freeze(each.map((word) => Object.freeze(word))))
      const { parts } = readLabel(Object.freeze(frozen), onFile)
      const printed = lines.map((each) => each.map(({ text }) => text).join(' ')).join('\n')
      for (const { text } of parts) expect(printed).toContain(text)
    }),
  )
})

describe('agreeing(one, other)', () => {
  const sure = readLabel([line('P/N OM-7710', 95), line('PF .64 IN WC', 95)], onFile)
  const less = readLabel([line('P/N OM-7710', 80), line('PF .64 IN WC', 80)], onFile)
  const other = readLabel([line('P/N OM-7719', 95), line('PF .84 IN WC', 95)], onFile)

  test('what two readings have alike is as sure as the surer', () => {
    expect(agreeing(less, sure)).toEqual(sure)
  })

  test('what only one of them has is shown and never offered', () => {
    const { values, parts } = agreeing(sure, other)
    expect([...values, ...parts].map(({ offered }) => offered)).toEqual([false, false, false, false])
    expect(values[0]?.why.join(' ')).toContain('only once like this')
  })

  test('the order of the two does not matter to what is offered', () => {
    const offered = ({ values, parts }: ReturnType<typeof agreeing>) =>
      [...values, ...parts].filter((each) => each.offered).map(({ text }) => text)
    expect(offered(agreeing(sure, less))).toEqual(offered(agreeing(less, sure)))
  })
})

test('lookAlikeDigits(word) touches decimal numbers alone', () => {
  expect(['O.6S', '.I2', '1.B0"', 'IO.5'].map(lookAlikeDigits)).toEqual(['0.65', '.12', '1.80"', '10.5'])
  expect(['OS.S', 'W.C.', 'OM-77IO', 'SIL', 'B.O'].map(lookAlikeDigits)).toEqual([
    'OS.S',
    'W.C.',
    'OM-77IO',
    'SIL',
    'B.O',
  ])
})
