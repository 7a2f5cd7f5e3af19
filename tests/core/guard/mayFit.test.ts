import { describe, expect, test } from 'vitest'
import { dangerOfFitted, foundFittedOffer, mayFit, type Part, usualGuardSettings } from '@/lib/core/guard'
import { frozen } from '../reading/made'

const position = { key: 'low-fire' }
const factory: Part = {
  partClass: 'factory',
  partNumber: 'QV-3310',
  listing: {
    by: 'current literature',
    where: 'parts sheet, page 4',
    positionKeys: ['low-fire', 'middle-fire'],
  },
}
const code = (part: Part) => {
  const answer = mayFit(frozen(part), position, usualGuardSettings)
  return answer.ok ? 'may fit' : answer.problem.code
}

describe('mayFit(part, position, settings)', () => {
  test('a fixed factory part named by the maker for this position may be fitted, also when it serves several', () => {
    expect(code(factory)).toBe('may fit')
  })

  test.each([
    ['general-purpose-part', { ...factory, partClass: 'general-purpose' }],
    ['general-purpose-part', { ...factory, adjustable: true }],
    ['part-class-not-known', { ...factory, partClass: 'not known' }],
    ['part-number-missing', { ...factory, partNumber: undefined }],
    ['part-number-missing', { ...factory, partNumber: ' ' }],
    ['listing-missing', { ...factory, listing: undefined }],
    [
      'listing-missing',
      { ...factory, listing: { by: 'factory support', where: '', positionKeys: ['low-fire'] } },
    ],
    [
      'listing-not-the-makers',
      { ...factory, listing: { by: 'parts listing', where: 'catalogue', positionKeys: ['low-fire'] } },
    ],
    [
      'listed-for-another-position',
      { ...factory, listing: { by: 'factory support', where: 'call 881', positionKeys: ['high-fire'] } },
    ],
  ] as const satisfies readonly (readonly [string, Part])[])('%s is refused', (expected, part) => {
    expect(code(part)).toBe(expected)
  })

  test('every refusal offers to record what is in already as found fitted, when and by whom', () => {
    for (const part of [
      { ...factory, partClass: 'general-purpose' },
      { ...factory, partClass: 'not known' },
      { ...factory, listing: undefined },
    ] as const satisfies readonly Part[]) {
      const answer = mayFit(part, position, usualGuardSettings)
      if (answer.ok) throw new Error('expected a refusal')
      expect(answer.problem.message).toContain(foundFittedOffer)
      expect(foundFittedOffer).toBe('It is already in: record it as found fitted, when and by whom.')
    }
  })

  test('no source and no listing makes a general-purpose part fit', () => {
    for (const by of usualGuardSettings.listers)
      expect(
        code({
          partClass: 'general-purpose',
          partNumber: 'QV-3310',
          listing: { by, where: 'page 1', positionKeys: ['low-fire'] },
        }),
      ).toBe('general-purpose-part')
  })
})

describe('dangerOfFitted(part)', () => {
  test('an adjustable or general-purpose switch found fitted makes the case hazardous', () => {
    expect(dangerOfFitted({ partClass: 'general-purpose' })).toEqual(['general-purpose-switch-fitted'])
    expect(dangerOfFitted({ partClass: 'not known', adjustable: true })).toEqual([
      'general-purpose-switch-fitted',
    ])
    expect(dangerOfFitted({ partClass: 'factory' })).toEqual([])
  })
})
