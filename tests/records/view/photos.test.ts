import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkRecord } from '@/lib/records/checkRecord'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import {
  photoStateOf,
  photosOfCase,
  photosOfFurnace,
  photosOfReport,
  pictureState,
} from '@/lib/records/view/photos'
import { proofOf, secondReadingOf } from '@/lib/records/view/ratingReports'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { held } from '../../app/setup/fakeDevice'
import { equipmentRecords, ids, pascals, report } from '../../app/setup/smallFile'

const id = (end: number): string => `01950000-0000-7000-8000-${String(end).padStart(12, '0')}`
const sha256 = 'ab'.repeat(32)
const other = 'cd'.repeat(32)
const now = '2026-03-01T08:00:00.000Z'

const photoBody = (more: object = {}) => ({
  sha256,
  mediaType: 'image/jpeg',
  width: 2048,
  height: 1536,
  bytes: 400_000,
  shows: 'document page',
  positionId: ids.low,
  ...more,
})
const manual = { ...report, source: 'older literature', asWritten: '-0.58', pascals: pascals.make }
const readOff = (photoId: string, more: object = {}) => ({
  ...manual,
  proof: { kind: 'photo', photoId },
  ...more,
})

type Said = [id: string, kind: string, body: Record<string, unknown>, by?: string]
/** What is said after the small file, each by person 1 unless said otherwise, with what was withheld marked. */
const recordsOf = (said: readonly Said[]): HeldRecord[] => {
  const records = held(said.map(([each, kind, body]) => [each, kind, body])).map(
    (record, at): HeldRecord => ({ ...record, seq: 100 + at, author: said[at]![3] ?? 'person-1' }),
  )
  return records.map((record) => {
    const by = records.find(({ kind, body }) => kind === 'withholding' && body.record === record.id)
    return by === undefined
      ? record
      : { ...record, withheld: { by: by.id, fields: by.body.fields as string[] } }
  })
}
const fileOf = (said: readonly Said[], picturesHeld: readonly string[] = [sha256]) =>
  foldTeamFile(Object.freeze([...equipmentRecords, ...recordsOf(said)]), new Set(picturesHeld))
const standing = (file: ReturnType<typeof fileOf>) => {
  const { closes } = setpointOf(file, ids.low, {}, ratingSettings(file, now))!.rating
  return closes
}
const photo: Said = [id(1), 'photo', photoBody()]
const first: Said = [id(2), 'report', readOff(id(1))]
const second: Said = [id(3), 'report', readOff(id(1), { asWritten: '.58 suction' }), 'person-2']
const withholding: Said = [
  id(9),
  'withholding',
  { record: id(1), fields: ['picture'], reason: 'A child is in it.' },
  'person-3',
]

test('a photo proves a report once the server holds its picture, and not before', () => {
  const waiting = fileOf([photo, first], [])
  const there = fileOf([photo, first])
  const proof = (file: typeof there) => proofOf(file.reports.get(id(2))!, file)
  expect([pictureState(waiting, sha256), proof(waiting)]).toEqual(['not here yet', undefined])
  expect([pictureState(there, sha256), proof(there)]).toEqual(['held', 'photo'])
})

test('a second person who reads the same off a photo divides the doubt by five, and the level rises', () => {
  const alone = fileOf([photo, first])
  const both = fileOf([photo, first, second])
  // Older literature 88 of 100; a second reader leaves a fifth of the 0.12 (lib/core/rating/sources.ts).
  expect(standing(alone)).toMatchObject({ level: 'Unverified', probability: expect.closeTo(0.88, 6) })
  expect(standing(both)).toMatchObject({ level: 'Supported', probability: expect.closeTo(0.976, 6) })
})

test.each([
  ['the same person twice', [photo, first, [second[0], second[1], second[2], 'person-1'] as Said]],
  [
    'another number',
    [photo, first, [id(3), 'report', readOff(id(1), { pascals: pascals.other }), 'person-2'] as Said],
  ],
  [
    'another photo',
    [
      photo,
      [id(4), 'photo', photoBody({ sha256: other })] as Said,
      first,
      [id(3), 'report', readOff(id(4)), 'person-2'] as Said,
    ],
  ],
  [
    'a reading that was withdrawn',
    [photo, first, second, [id(5), 'withdrawal', { record: id(3), reason: 'Misread.' }] as Said],
  ],
])('no second reading is: %s', (_, said) => {
  const file = fileOf(said, [sha256, other])
  expect(secondReadingOf(file.reports.get(id(2))!, file)).toBeUndefined()
})

test('two people who read one photo differently are of one origin, and in dispute only where the source may not be outvoted', () => {
  const label = { source: 'factory switch label', readOffPart: ids.oldPart }
  const file = fileOf([
    photo,
    [id(2), 'report', readOff(id(1), label)],
    [
      id(3),
      'report',
      readOff(id(1), { ...label, pascals: pascals.other, origin: 'typed otherwise' }),
      'person-2',
    ],
  ])
  expect(standing(file).level).toBe('In dispute')
})

test('a withheld picture is no proof, rules out no misreading, and the level falls back', () => {
  const file = fileOf([photo, first, second, withholding])
  expect(pictureState(file, sha256)).toBe('withheld')
  expect(proofOf(file.reports.get(id(2))!, file)).toBeUndefined()
  expect(secondReadingOf(file.reports.get(id(2))!, file)).toBeUndefined()
  expect(standing(file)).toMatchObject({ level: 'Unverified', probability: expect.closeTo(0.88, 6) })
})

test('a picture withheld of one record is withheld of every record that names it', () => {
  const again: Said = [id(4), 'photo', photoBody()]
  const file = fileOf([photo, again, [id(2), 'report', readOff(id(4))], withholding])
  expect(proofOf(file.reports.get(id(2))!, file)).toBeUndefined()
})

test('a photo that was withdrawn proves nothing; one that was added to a report later does', () => {
  const taken = fileOf([photo, first, [id(5), 'withdrawal', { record: id(1), reason: 'Another house.' }]])
  expect(proofOf(taken.reports.get(id(2))!, taken)).toBeUndefined()
  const later = fileOf([
    [id(2), 'report', manual],
    [id(1), 'photo', photoBody({ reportId: id(2) })],
  ])
  expect(photosOfReport(later, id(2)).map((each) => each.id)).toEqual([id(1)])
  expect(proofOf(later.reports.get(id(2))!, later)).toBe('photo')
})

test('photoStateOf(file, report) is that of the best photo that bears it out, and says when it was withdrawn', () => {
  const stateOf = (said: readonly Said[], picturesHeld?: readonly string[]) => {
    const file = fileOf(said, picturesHeld)
    return photoStateOf(file, file.reports.get(id(2))!)
  }
  const later: Said = [id(4), 'photo', photoBody({ sha256: other, reportId: id(2) })]
  const withdrawal = (record: string): Said => [id(5), 'withdrawal', { record, reason: 'Another house.' }]
  expect(stateOf([photo, first])).toBe('held')
  expect(stateOf([photo, first], [])).toBe('not here yet')
  expect(stateOf([first])).toBe('not here yet')
  expect(stateOf([photo, first, withholding])).toBe('withheld')
  expect(stateOf([photo, first, withholding, later])).toBe('not here yet')
  expect(stateOf([photo, first, withholding, later], [sha256, other])).toBe('held')
  expect(stateOf([photo, first, withdrawal(id(1))])).toBe('withdrawn')
  // Of a report that was withdrawn its photo stays readable.
  expect(stateOf([photo, first, withdrawal(id(2))])).toBe('held')
  const plain: Said = [id(2), 'report', manual]
  expect([stateOf([plain]), stateOf([plain, later])]).toEqual([undefined, 'not here yet'])
})

test('a photo that was added to a telephone answer is refused: what was said can’t be photographed', () => {
  const call: Said = [id(2), 'report', { ...manual, source: 'distributor', readBack: true }]
  const checked = checkRecord('photo', photoBody({ reportId: id(2) }), fileOf([call]), {
    id: 'person-1',
    role: 'technician',
    saidAt: now,
  })
  expect(checked).toMatchObject({
    ok: false,
    refusal: { rule: 'a photo bears out what can be photographed' },
  })
})

test('a report names no record as its photo but a photo, and a photo belongs to something', () => {
  const saying = { id: 'person-1', role: 'technician', saidAt: now } as const
  const file = fileOf([photo])
  expect(checkRecord('report', readOff(ids.low), file, saying)).toMatchObject({
    ok: false,
    refusal: { rule: 'a photo is its proof' },
  })
  expect(checkRecord('photo', photoBody({ positionId: undefined }), file, saying)).toMatchObject({
    ok: false,
    fields: { furnaceId: expect.stringContaining('Name one.') },
  })
  expect(checkRecord('photo', photoBody({ visitId: id(7) }), file, saying)).toMatchObject({
    ok: false,
    fields: { caseId: expect.any(String) },
  })
})

test('the photos of a furnace are its own and those of its cases, newest first; the photos of a case its own', () => {
  const opened: Said = [
    id(20),
    'case',
    { furnaceId: ids.furnace, complaint: 'Locks out', circuit: 'pressure switch' },
  ]
  const file = fileOf([
    opened,
    [id(1), 'photo', photoBody({ furnaceId: ids.furnace })],
    [id(2), 'photo', photoBody({ caseId: id(20) })],
    [id(3), 'photo', photoBody({ furnaceId: ids.bareFurnace })],
  ])
  expect(photosOfFurnace(file, ids.furnace).map((each) => each.id)).toEqual([id(2), id(1)])
  expect(photosOfCase(file, id(20)).map((each) => each.id)).toEqual([id(2)])
})

test('whatever order records arrive in, a photo proves the same, and a picture that is held never lowers a level', () => {
  const records = [...equipmentRecords, ...recordsOf([photo, first, second])]
  const order = ['Not on file', 'Unverified', 'Supported', 'Verified']
  const levels = [new Set<string>(), new Set([sha256])].map((pictures) => {
    const expected = standing(foldTeamFile(records, pictures))
    fc.assert(
      fc.property(fc.shuffledSubarray(records, { minLength: records.length }), (shuffled) => {
        expect(standing(foldTeamFile(shuffled, pictures))).toEqual(expected)
      }),
      { numRuns: 30 },
    )
    return order.indexOf(expected.level)
  })
  expect(levels[1]).toBeGreaterThan(levels[0]!)
})
