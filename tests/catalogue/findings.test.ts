import { describe, expect, test } from 'vitest'
import {
  dangerValueOf,
  findingById,
  findingGroups,
  findings,
  retiredFindings,
  seenOrRuledOut,
} from '@/lib/catalogue/findings'
import { looksFromFindings } from '@/lib/catalogue/findings/looksFromFindings'
import { observationsOnList, readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { checkCatalogue, notChecked } from '@/lib/core/diagnosis'
import { dangerFindingIds, lookNames } from '@/lib/core/guard'

const proving = (look: string, says: string) =>
  findings.flatMap(({ id, proves, values }) =>
    proves?.look === look
      ? values.filter((value) => proves.whenValue[value] === says).map((value) => [id, value] as const)
      : [],
  )

describe('findings', () => {
  test('there are at least a hundred of them, in nine groups, each under an id of plain words', () => {
    expect(findings.length).toBeGreaterThanOrEqual(100)
    expect([...new Set(findings.map(({ group }) => group))]).toEqual([...findingGroups])
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length)
    for (const { id } of findings) expect(id).toMatch(/^[a-z]{2,}(-([a-z]+|15|30|days))*$/)
  })

  test('several have more than the two values', () => {
    expect(findings.filter(({ values }) => values.length > 2).length).toBeGreaterThanOrEqual(15)
  })

  test('they are a vocabulary that a diagnosis can work on', () => {
    expect(() => checkCatalogue({ causes: [{ id: 'any', prior: 1 }], findings })).not.toThrow()
  })

  test('every one has a short name of its own, a source, and no value that says more than what is observed', () => {
    expect(new Set(findings.map(({ name }) => name)).size).toBe(findings.length)
    for (const { name, source, values } of findings) {
      expect(name.length).toBeLessThanOrEqual(70)
      expect(source.length).toBeGreaterThan(10)
      for (const value of values) expect(value).not.toBe(notChecked)
    }
  })

  test('what was on arrival, and what empties a house, is context and no evidence', () => {
    expect(findings.filter(({ carries }) => carries === 'context only').map(({ id }) => id)).toEqual([
      'locked-out-on-arrival',
      'self-cleared-lock-out',
      'running-on-arrival',
      'smell-of-gas',
      'co-alarm-sounding',
      'anyone-unwell',
    ])
  })

  test('every danger of the guard is a finding under its own code, and two are the value of another one too', () => {
    const codes = findings.flatMap(({ id, danger }) => (danger?.code === id ? [id] : []))
    expect([...codes].sort()).toEqual([...dangerFindingIds].sort())
    expect(
      findings.flatMap(({ id, danger }) => (danger && danger.code !== id ? [[id, danger]] : [])),
    ).toEqual([
      [
        'switch-after-inducer-start',
        { code: 'switch-closed-at-rest', value: 'read as closed before the inducer starts' },
      ],
      ['vent-end', { code: 'vent-blocked-uncorrected', value: 'blocked' }],
    ])
    for (const { id, danger, values } of findings) {
      if (!danger) continue
      expect(values).toContain(danger.value)
      expect(dangerValueOf(id, danger.value)).toBe(danger.code)
      expect(dangerValueOf(id, 'ruled out')).toBeUndefined()
    }
    expect(dangerValueOf('port', 'plugged')).toBeUndefined()
    expect(dangerValueOf('vent-end', 'ringed with ice')).toBeUndefined()
    expect(dangerValueOf('no-such-finding', 'seen')).toBeUndefined()
  })

  test('trouble is seldom seen where a cause says nothing about it, good order usually, the values of a fact equally often', () => {
    expect(findingById('water-in-hose')?.usual).toEqual({ seen: 0.15, 'ruled out': 0.85 })
    expect(findingById('vent-clear-end-to-end')?.usual).toEqual({ seen: 0.75, 'ruled out': 0.25 })
    expect(findingById('furnace-kind')?.usual).toEqual({ condensing: 0.5, 'not condensing': 0.5 })
    expect(findingById('inducer-sound')?.usual.normal).toBeCloseTo(0.55, 12)
  })
})

describe('looksFromFindings(observed)', () => {
  test('nothing observed: no look is checked', () => {
    expect(new Set(Object.values(looksFromFindings({})))).toEqual(new Set(['not checked']))
  })

  test.each(lookNames)('%s can be proven clear by findings that a person records', (look) => {
    const clear = proving(look, 'clear')
    expect(clear.length).toBeGreaterThan(0)
    for (const [id] of clear) expect(findingById(id)?.asked).toBe('by a person')
    const observed = Object.fromEntries(clear)
    expect(looksFromFindings(observed)[look]).toBe('clear')
    for (const other of lookNames.filter((name) => name !== look))
      expect(looksFromFindings(observed)[other]).toBe('not checked')
  })

  test.each(lookNames)('%s is not clear while one finding that it takes is left out', (look) => {
    const clear = new Map(proving(look, 'clear'))
    for (const id of clear.keys()) {
      const without = Object.fromEntries([...clear].filter(([other]) => other !== id))
      expect(looksFromFindings(without)[look]).toBe('not checked')
      expect(looksFromFindings({ ...without, [id]: notChecked })[look]).toBe('not checked')
    }
  })

  test.each(lookNames)(
    '%s has found a fault as soon as one finding says so, whatever the others say',
    (look) => {
      const faults = proving(look, 'fault found')
      expect(faults.length).toBeGreaterThan(0)
      for (const [id, value] of faults)
        expect(looksFromFindings({ ...Object.fromEntries(proving(look, 'clear')), [id]: value })[look]).toBe(
          'fault found',
        )
    },
  )

  test('a furnace that does not condense has no drain to fault', () => {
    const none = { trap: 'none: does not condense', 'drain-on-water-test': 'none: does not condense' }
    expect(looksFromFindings(none).drainAndTrap).toBe('clear')
  })
})

describe('retired findings', () => {
  const retired = { 'old-name': { name: 'As it was called', values: seenOrRuledOut } }

  test('none of them is a finding of today', () => {
    for (const id of Object.keys(retiredFindings)) expect(findingById(id)).toBeUndefined()
  })

  test('a record that names one stays readable, and one that never was is said to be none', () => {
    expect(readableFinding('old-name', retired)).toEqual({
      name: 'As it was called',
      values: seenOrRuledOut,
      retired: true,
    })
    expect(readableFinding('port', retired)).toMatchObject({ retired: false })
    expect(readableFinding('toString', retired)).toBeUndefined()
  })

  test('only what the catalogue of today has is weighed', () => {
    const observed = Object.freeze({ 'old-name': 'seen', port: 'plugged', trap: 'mossy', intake: notChecked })
    expect(observationsOnList(observed)).toEqual({ port: 'plugged', intake: notChecked })
  })
})
