import { describe, expect, test } from 'vitest'
import { furnaceOf } from '@/app/setpoint/setpointAddress'
import { accuracyForms } from '@/lib/catalogue/accuracyForms'
import type { Slip } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import { switchKinds } from '@/lib/core/vocabulary'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { needs } from '@/lib/records/kinds/ratingRequest'
import { partChain } from '@/lib/records/view/partChain'
import { openRequests, ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { demoDay } from '@/seed-demo/book'
import { demoSeed } from '@/seed-demo/company'
import { branches } from '@/seed-demo/names'
import type { Showing } from '@/seed-demo/showing'
import { companyOf } from './companies'

const noonAfter = '2026-11-21T12:00:00Z'

const foldedOf = (seed: number) => {
  const { records, showings } = companyOf(seed)
  const file = foldTeamFile(records)
  return { file, showings, settings: ratingSettings(file, noonAfter) }
}
const { file, showings, settings } = foldedOf(demoSeed)

const ratingShown = (of: ReturnType<typeof foldedOf>, showing: Showing) =>
  setpointOf(of.file, showing.positionId, furnaceOf(of.file, showing), of.settings)!.rating

/** Every standing that a screen can show: each position by itself, and on each furnace of its range. */
const standings = [...file.positions.values()].flatMap(({ id, body }) => {
  const furnaces = counting(file.furnaces).filter((furnace) => furnace.body.rangeId === body.rangeId)
  return [undefined, ...furnaces.map((furnace) => furnace.id)].map(
    (furnaceId) => setpointOf(file, id, furnaceOf(file, { furnaceId }), settings)!.rating,
  )
})

describe('every hand-written case shows what it is there to show', () => {
  test.each(showings)('$shows', (showing) => {
    const rating = ratingShown({ file, showings, settings }, showing)
    for (const answer of ['closes', 'opens', 'unstated'] as const) {
      const expected = showing[answer]
      if (expected === undefined) continue
      const { level, likelySlip } = rating[answer]
      expect({ level, slip: likelySlip }, rating[answer].reasons.join(' ')).toEqual({
        level: expected.level,
        slip: expected.slip,
      })
    }
    if (showing.asks !== undefined) expect(rating.asks).toEqual(showing.asks)
  })

  test('with other seeds as well', () => {
    for (const seed of [1, 2]) {
      const other = foldedOf(seed)
      for (const showing of other.showings) {
        const rating = ratingShown(other, showing)
        for (const answer of ['closes', 'opens', 'unstated'] as const)
          if (showing[answer] !== undefined)
            expect(rating[answer].level, showing.shows).toBe(showing[answer].level)
      }
    }
  })
})

describe('nothing is missing', () => {
  test('every level occurs for closes and for opens', () => {
    const every: Record<Level, true> = {
      Verified: true,
      Supported: true,
      Unverified: true,
      'In dispute': true,
      'Not on file': true,
    }
    for (const answer of ['closes', 'opens'] as const)
      expect(new Set(standings.map((rating) => rating[answer].level))).toEqual(new Set(Object.keys(every)))
    expect(standings.some(({ unstated }) => unstated.level === 'Supported')).toBe(true)
  })

  test('every slip that can be told occurs', () => {
    const every: Record<Slip, true> = {
      'ten times': true,
      'a tenth': true,
      'break taken for make': true,
      'make taken for break': true,
      'sister switch taken for this one': true,
      'number read in another unit': true,
    }
    const found = standings.flatMap(({ closes, opens }) => [closes.likelySlip, opens.likelySlip])
    expect(new Set(found.filter((slip) => slip !== undefined))).toEqual(new Set(Object.keys(every)))
  })

  test('an elevation, a revision and a part number are asked for', () => {
    const asked = new Set(standings.flatMap(({ asks }) => asks))
    for (const ask of ['elevation', 'revision', 'serial', 'part number'] as const)
      expect(asked).toContain(ask)
  })

  test('supersessions: each setting, a kit, a chain of three, one number for several', () => {
    const all = counting(file.supersessions).map(({ body }) => body)
    expect(new Set(all.map(({ setting }) => setting))).toEqual(new Set(['same', 'changed', 'not stated']))
    expect(all.some(({ kit }) => kit)).toBe(true)
    expect(Math.max(...counting(file.parts).map(({ id }) => partChain(file, id).length))).toBe(3)
    const replaced = all.map(({ newPartId }) => all.filter((other) => other.newPartId === newPartId).length)
    expect(Math.max(...replaced)).toBe(3)
  })

  test('each kind of switch has a report; one-sided limits and undecoded letters are on file', () => {
    const bodies = counting(file.reports).map(({ body }) => body)
    expect(new Set(bodies.map(({ kind }) => kind))).toEqual(new Set(switchKinds))
    expect(new Set(bodies.map(({ limit }) => limit))).toEqual(new Set(['nominal', 'maximum', 'minimum']))
    const undecoded = bodies.filter(({ asWritten }) => /\bP[RF]\b/.test(asWritten))
    expect(undecoded.map(({ action }) => action)).toEqual(['not stated'])
  })

  test('a report is withdrawn, a dispute settled, a note withheld, two parts joined', () => {
    expect([...file.reports.values()].some(({ withdrawn }) => withdrawn !== undefined)).toBe(true)
    expect(counting(file.settlements).map(({ body }) => body.action)).toEqual(['closes', 'opens'])
    expect([...file.parts.values()].filter(({ sameAs }) => sameAs !== undefined)).toHaveLength(1)
    expect([...file.records.values()].filter(({ kind }) => kind === 'withholding')).toHaveLength(1)
  })

  test('an adjustable switch was fitted by us, and a factory part took its place', () => {
    const found = counting(file.foundFitted).find(({ body }) => body.fittedBy.startsWith('us'))!
    const part = file.parts.get(found.body.partId!)!.body
    expect(part).toMatchObject({ class: 'general-purpose', fieldAdjustable: true, positionIds: [] })
    const repair = counting(file.repairs).find(
      ({ body }) => body.furnaceId === found.body.furnaceId && body.fittedPart !== undefined,
    )!
    expect(file.parts.get(repair.body.fittedPart!)!.body.class).toBe('factory')
    expect(repair.at > found.at).toBe(true)
  })

  test('requests: some answered, some open, every need among them', () => {
    const open = openRequests(file)
    expect(open).toHaveLength(4)
    expect(file.requests.size).toBeGreaterThan(open.length)
    expect(new Set(open.flatMap(({ body }) => body.needs))).toEqual(new Set(needs))
  })

  test('furnaces in three branches, and one that replaced another', () => {
    const furnaces = counting(file.furnaces).map(({ body }) => body)
    expect(new Set(furnaces.map(({ branch }) => branch))).toEqual(new Set(Object.keys(branches)))
    expect(furnaces.filter(({ replaces }) => replaces !== undefined)).toHaveLength(1)
  })

  test('gauges: each form of accuracy, one past its calibration', () => {
    const gauges = counting(file.gauges).map(({ body }) => body)
    const formOf = (gauge: (typeof gauges)[number]) =>
      accuracyForms.find(
        ({ fields, combine }) =>
          combine === gauge.combine &&
          (['percentOfReading', 'counts', 'percentOfSpan'] as const).every(
            (field) => (gauge[field] !== undefined) === fields.includes(field),
          ),
      )?.key
    expect(new Set(gauges.map(formOf))).toEqual(new Set(accuracyForms.map(({ key }) => key)))
    const overdue = gauges.filter(({ calibrationDue }) => calibrationDue && calibrationDue < demoDay)
    expect(overdue).toHaveLength(1)
  })

  test('a preference for each unit that somebody chose', () => {
    const units = [...file.preferences.values()].map(({ unit }) => unit)
    expect(new Set(units)).toEqual(new Set(['inH2O', 'Pa']))
  })
})
