import { describe, expect, test } from 'vitest'
import { recordEnvelope } from '@/lib/records/envelope'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { kindVersions, versionOf } from '@/lib/records/kindVersions'
import { recordKinds } from '@/lib/records/registry'
import { textsIn } from '@/lib/records/textsIn'
import { thePicture, withholdableFields } from '@/lib/records/withholdable'
import { sampleRecords } from './samples'

const everyVersion = Object.values(recordKinds).flatMap((kind) =>
  Object.keys(kind.versions).map((version) => [kind.kind, Number(version)] as const),
)

describe('stored samples', () => {
  test.each(everyVersion)('%s, version %i, has a stored sample that its schema accepts', (kind, version) => {
    const samples = sampleRecords.filter((record) => record.kind === kind && record.version === version)
    expect(samples.length).toBeGreaterThan(0)
    for (const sample of samples) {
      expect(recordKinds[kind]!.versions[version]!.safeParse(sample.body)).toMatchObject({ success: true })
    }
  })

  test.each(everyVersion)('%s, version %i, refuses a field that it does not know', (kind, version) => {
    const sample = sampleRecords.find((record) => record.kind === kind && record.version === version)!
    const parsed = recordKinds[kind]!.versions[version]!.safeParse({ ...sample.body, surprise: 1 })
    expect(parsed.success).toBe(false)
  })

  test('every sample is a record, names only records before it, and folds without anything unknown', () => {
    const seen = new Set<string>()
    for (const { seq, receivedAt, clockShiftMs, ...record } of sampleRecords) {
      expect(recordEnvelope.safeParse(record)).toMatchObject({ success: true })
      for (const id of recordKinds[record.kind]!.refersTo(record.body)) expect(seen).toContain(id)
      seen.add(record.id)
    }
    expect(foldTeamFile(sampleRecords).unknown).toEqual([])
  })

  test('the fold knows the kinds and versions of the registry, and the newest is the one that is written', () => {
    const versions = Object.values(recordKinds).map(({ kind, versions }) => [
      kind,
      Object.keys(versions).map(Number),
    ])
    expect([...kindVersions]).toEqual(versions)
    for (const { kind, version } of Object.values(recordKinds)) expect(versionOf(kind)).toBe(version)
  })

  test('the ids that stand in a body are those that its kind refers to, but for the lines of an import', () => {
    const ids = new Set(sampleRecords.map(({ id }) => id))
    for (const { kind, body } of sampleRecords.filter((record) => record.kind !== 'imported lines')) {
      const standing = textsIn(body).filter((text) => ids.has(text))
      expect(new Set(standing), kind).toEqual(new Set(recordKinds[kind]!.refersTo(body)))
    }
  })

  test('only fields that the schema of every version knows can be withheld', () => {
    for (const kind of Object.values(recordKinds)) {
      expect([...kind.mayWithhold]).toEqual([...withholdableFields(kind.kind)])
      for (const { version, body } of sampleRecords.filter((record) => record.kind === kind.kind)) {
        // A photo's picture is no field of its body: it lies beside the log.
        for (const field of kind.mayWithhold.filter((each) => each !== thePicture)) {
          const redacted = kind.versions[version]!.safeParse({ ...body, [field]: '[withheld]' })
          expect(redacted, `${kind.kind}.${field}`).toMatchObject({ success: true })
        }
      }
    }
  })
})
