import { describe, expect, test } from 'vitest'
import { currentPart, type Supersession, samePart } from '@/lib/core/guard'
import { frozen } from '../reading/made'

const chain: Supersession[] = frozen([
  { from: 'A-1', to: 'B-2', setting: 'as before' },
  { from: 'B-2', to: 'C-3', setting: 'not stated' },
  { from: 'C-3', to: 'D-4', setting: 'changed' },
])

describe('currentPart(partNumber, supersessions)', () => {
  test('a number that nothing replaced is ordered as it is', () => {
    expect(currentPart('A-1', [])).toEqual({
      ok: true,
      value: { orderPart: 'A-1', through: ['A-1'], setting: 'as before' },
    })
  })

  test('a chain of three is followed to its end, and a changed setting stays said', () => {
    expect(currentPart('A-1', chain)).toEqual({
      ok: true,
      value: { orderPart: 'D-4', through: ['A-1', 'B-2', 'C-3', 'D-4'], setting: 'changed' },
    })
  })

  test('a link that says nothing of the setting leaves the whole chain not stated', () => {
    expect(currentPart('A-1', chain.slice(0, 2))).toMatchObject({ value: { setting: 'not stated' } })
    expect(
      currentPart('A-1', [
        { from: 'A-1', to: 'B-2', setting: 'not stated' },
        { from: 'B-2', to: 'C-3', setting: 'as before' },
      ]),
    ).toMatchObject({ value: { setting: 'not stated' } })
  })

  test('the order of the records does not matter, and the same link twice is one', () => {
    expect(currentPart('A-1', [...chain].reverse().concat(chain))).toEqual(currentPart('A-1', chain))
  })

  test('two numbers that replace one are a fork, and a circle is a loop: both are asked about', () => {
    expect(currentPart('A-1', [...chain, { from: 'B-2', to: 'X-9', setting: 'as before' }])).toMatchObject({
      problem: { code: 'supersession-forks' },
    })
    expect(currentPart('A-1', [...chain, { from: 'D-4', to: 'B-2', setting: 'as before' }])).toMatchObject({
      problem: { code: 'supersession-loops' },
    })
  })
})

describe('samePart(one, other, supersessions)', () => {
  test('holds both ways along a chain, and not across', () => {
    expect(samePart('A-1', 'D-4', chain)).toBe(true)
    expect(samePart('D-4', 'A-1', chain)).toBe(true)
    expect(samePart('A-1', 'Z-0', chain)).toBe(false)
    expect(samePart('Z-0', 'Z-0', [])).toBe(true)
  })
})
