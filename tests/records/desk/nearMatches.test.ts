import { describe, expect, test } from 'vitest'
import { nearMatches, type Wanted } from '@/lib/records/view/desk/nearMatches'
import { worthVerifying } from '@/lib/records/view/desk/worthVerifying'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { at, equipment, fileOf, id, ids, report, request, type Told } from './told'

const told: Told[] = [
  ...equipment,
  [id('c1'), 'report', report({ positionId: ids.high, stage: 'high fire' })],
  [id('c2'), 'report', report({ positionId: ids.lowLarge })],
]
const file = fileOf(told)
const wanted = (over: Partial<Wanted>): Wanted => ({
  position: undefined,
  model: '',
  positionName: '',
  furnace: {},
  ...over,
})
const near = (over: Partial<Wanted>, from = file) =>
  nearMatches(from, wanted(over)).map(({ position, differs }) => [position.id, differs])

describe('nearMatches(file, wanted)', () => {
  test('of a switch on file: the other stage of its range, and the same switch of another size', () => {
    expect(near({ position: file.positions.get(ids.low) })).toEqual([
      [ids.high, [{ what: 'stage', there: 'high fire' }]],
      [ids.lowLarge, [{ what: 'size', there: 'Larkfell 2 large' }]],
    ])
  })

  test('of a model that fits a pattern: its switches, with the stage that was named', () => {
    expect(near({ model: 'LF2-080-B', positionName: 'low fire' })[0]).toEqual([
      ids.high,
      [{ what: 'stage', there: 'high fire' }],
    ])
    expect(near({ model: 'LF2-080-B', positionName: 'High fire' })[0]).toEqual([ids.high, []])
  })

  test('of a switch whose reports are for other elevations: itself, differing in that', () => {
    const upTo = fileOf([...told, [id('c3'), 'report', report({ elevationBand: { toMetres: 1200 } })]])
    expect(
      near({ position: upTo.positions.get(ids.low), furnace: { elevationMetres: 1500 } }, upTo)[0],
    ).toEqual([ids.low, [{ what: 'elevation', there: { toMetres: 1200 } }]])
    expect(
      near({ position: upTo.positions.get(ids.low), furnace: { elevationMetres: 900 } }, upTo).map(
        ([key]) => key,
      ),
    ).not.toContain(ids.low)
  })

  test('of a revision that the reports are not for', () => {
    const forA = fileOf([...told, [id('c3'), 'report', report({ revisionRange: { from: 'A', to: 'A' } })]])
    expect(near({ position: forA.positions.get(ids.low), furnace: { revision: 'B' } }, forA)[0]).toEqual([
      ids.low,
      [{ what: 'revision', there: { from: 'A', to: 'A' } }],
    ])
  })

  test('lists nothing without a report on file, and nothing for a model that is near none', () => {
    expect(near({ position: file.positions.get(ids.low) }, fileOf(equipment))).toEqual([])
    expect(near({ model: 'QQ9' })).toEqual([])
    expect(near({})).toEqual([])
  })
})

describe('worthVerifying(file, settings)', () => {
  const ranked = (more: Told[]) => {
    const all = fileOf([...told, ...more])
    return worthVerifying(all, ratingSettings(all, at('18:00'))).map(
      ({ position, level, furnaces, asked }) => [position.id, level, furnaces, asked],
    )
  }
  const caseOn = (end: string, furnaceId: string): Told => [
    id(end),
    'case',
    { furnaceId, complaint: 'No heat', circuit: 'proving circuit' },
  ]

  test('counts the furnaces worked on and the open questions, and puts first what is least known', () => {
    expect(
      ranked([
        caseOn('d1', ids.hill),
        caseOn('d2', ids.hill),
        caseOn('d3', ids.vale),
        [id('d4'), 'rating request', request({ positionId: ids.low })],
      ]),
    ).toEqual([
      [ids.low, 'Not on file', 2, 1],
      [ids.high, 'Supported', 2, 0],
    ])
  })

  test('lists nothing that nobody has worked on, asked for or looked up', () => {
    expect(ranked([])).toEqual([])
  })

  test('counts look-ups as uses, so that what is opened often comes before what is seldom met', () => {
    const both = [caseOn('d1', ids.hill)]
    expect(ranked(both).map(([id]) => id)).toEqual([ids.low, ids.high])
    const looked = new Map([[ids.high, 14]])
    const all = fileOf([...told, ...both])
    const rows = worthVerifying(all, ratingSettings(all, at('18:00')), looked)
    expect(
      rows.map(({ position, lookedUp, furnaces, lookups }) => [position.id, lookedUp, furnaces, lookups]),
    ).toEqual([
      [ids.high, 14, 1, 15],
      [ids.low, 0, 1, 1],
    ])
    expect(rows[0]!.lookupsInDoubt).toBe(15 * rows[0]!.doubt)
  })

  test('adds up the look-ups of positions that were joined, and passes over what is not on this device', () => {
    const joined: Told = [id('d5'), 'same as', { kept: ids.low, duplicate: ids.high, reason: 'One switch.' }]
    const all = fileOf([...told, joined])
    const looked = new Map([
      [ids.low, 2],
      [ids.high, 3],
      [id('ff'), 9],
    ])
    const rows = worthVerifying(all, ratingSettings(all, at('18:00')), looked)
    expect(rows.map(({ position, lookedUp }) => [position.id, lookedUp])).toEqual([[ids.low, 5]])
  })
})
