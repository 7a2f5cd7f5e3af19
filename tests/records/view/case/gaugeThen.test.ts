import { expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { gaugeThen } from '@/lib/records/view/case/gaugeThen'
import { replacementFor } from '@/lib/records/view/case/switchCase'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { at, base, ids, opened, reading, said, team, viewOf, withdrawn } from './team'

const anew = '01940000-0000-7000-8000-000000000900'
const gaugeBody = base.find(({ id }) => id === ids.gauge)!.body
/** The same gauge, calibrated anew on the 20th, and joined with its old record. */
const calibrated = (due: string) => [
  said('gauge', { ...gaugeBody, calibrationDue: due }, { id: anew, at: at(20) }),
  said('same as', { kept: anew, duplicate: ids.gauge, reason: 'Calibrated anew' }, { at: at(20, '12:01') }),
]

test('gaugeThen(file, id, moment): the record named until it is joined to another, the other from then on', () => {
  const file = team(calibrated('2027-09-30'))
  expect(gaugeThen(file, ids.gauge, at(12))?.body.calibrationDue).toBe('2026-09-30')
  expect(gaugeThen(file, ids.gauge, at(21))?.body.calibrationDue).toBe('2027-09-30')
})

test('a join that was withdrawn is none, and a gauge withdrawn later was on record before', () => {
  const joined = calibrated('2027-09-30')
  const parted = team(joined, withdrawn(joined[1]!, at(22)))
  expect(gaugeThen(parted, ids.gauge, at(23))?.body.calibrationDue).toBe('2026-09-30')
  const gone = team(withdrawn(base.find(({ id }) => id === ids.gauge)!, at(22)))
  expect(gaugeThen(gone, ids.gauge, at(12))?.id).toBe(ids.gauge)
})

test('no gauge named, or none on this device: undefined', () => {
  expect(gaugeThen(team(), undefined, at(12))).toBeUndefined()
  expect(gaugeThen(team(), anew, at(12))).toBeUndefined()
})

test('a reading taken past its calibration stays so once the gauge is calibrated anew', () => {
  const lapsed = base.map((record) =>
    record.id === ids.gauge ? { ...record, body: { ...gaugeBody, calibrationDue: '2026-01-01' } } : record,
  )
  const missingWith = (...more: readonly (readonly HeldRecord[])[]) => {
    const file = team(lapsed, opened, reading(0.9), ...more)
    const view = viewOf(file, at(25))
    const settings = ratingSettings(file, at(25))
    const setpoint = setpointOf(file, ids.low, furnaceForRating(view.file.furnace), settings)!
    return replacementFor(file, view, setpoint, 'will not close').missing
  }
  expect(missingWith()).toContain('gauge-in-calibration')
  expect(missingWith(calibrated('2027-09-30'))).toContain('gauge-in-calibration')
})
