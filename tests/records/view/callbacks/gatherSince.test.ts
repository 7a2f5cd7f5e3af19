import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { redact } from '@/lib/records/redact'
import { gatherSince, type TeamFacts } from '@/lib/records/view/callbacks/caseFacts'
import { besideTheFacts } from '@/lib/records/view/callbacks/touchedFurnaces'
import { withholdableFields } from '@/lib/records/withholdable'
import { demoRecords, demoSeed } from '@/seed-demo/company'

type Before = Parameters<typeof gatherSince>[0]

function gathered(before: Before, file: TeamFile): TeamFacts {
  const steps = gatherSince(before, file)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

const furnaceOf = (records: readonly HeldRecord[]) => {
  const byId = new Map(records.map((record) => [record.id, record]))
  return ({ id, kind, body }: HeldRecord): unknown =>
    kind === 'furnace'
      ? id
      : (body.furnaceId ??
        byId.get(String(body.caseId))?.body.furnaceId ??
        byId.get(String(body.noticeId))?.body.furnaceId)
}

/** Some furnaces of the demo with all that is of them, and everything that is of no furnace; as the log holds it. */
function someOfTheDemo(): HeldRecord[] {
  const all: HeldRecord[] = demoRecords(demoSeed)
  const of = furnaceOf(all)
  const furnaces = all.filter(({ kind }) => kind === 'furnace').map(({ id }) => id)
  const noticed = new Set(all.filter(({ kind }) => kind === 'lifting' || kind === 'found fitted').map(of))
  const wanted = new Set<unknown>(furnaces.filter((id, place) => place % 16 === 0 || noticed.has(id)))
  return all
    .filter((record) => of(record) === undefined || wanted.has(of(record)))
    .map((record, place) => ({ ...record, seq: place + 1, receivedAt: record.saidAt }))
}

const demo = someOfTheDemo()
const kinds = [...new Set(demo.map(({ kind }) => kind))]

/** What can become of a log: each gives it anew, and leaves the records alone that it does nothing to. */
const whatBecomes = [
  'arrives',
  'withdrawn',
  'brought back',
  'withheld',
  'said twice',
  'another clock',
  'waits no longer',
  'joined',
] as const
type Step = { what: (typeof whatBecomes)[number]; kind: string; which: number }

const said = (kind: string, body: Record<string, unknown>, from: HeldRecord, place: number): HeldRecord => ({
  ...from,
  id: `01990000-0000-7000-8000-${String(place).padStart(12, '0')}`,
  kind,
  version: 1,
  body,
  seq: 1_000_000 + place,
})
const withdrawalOf = (record: HeldRecord, place: number): HeldRecord =>
  said('withdrawal', { record: record.id, reason: 'not so' }, record, place)

function after(
  log: readonly HeldRecord[],
  missing: HeldRecord[],
  { what, kind, which }: Step,
  place: number,
) {
  const ofKind = log.filter((record) => record.kind === kind)
  const one = ofKind[which % ofKind.length]
  const other = ofKind[(which + 1) % ofKind.length]
  const changed = (how: (record: HeldRecord) => HeldRecord) =>
    log.map((record) => (record === one ? how(record) : record))
  if (what === 'arrives') return [...log, ...missing.splice(0, 1 + (which % 9))]
  if (one === undefined || other === undefined) return log
  if (what === 'withdrawn') return [...log, withdrawalOf(one, place)]
  if (what === 'withheld') return changed((record) => redact(record, withholdableFields(kind)))
  if (what === 'said twice') return [...log, { ...said(kind, one.body, one, place), version: one.version }]
  if (what === 'another clock')
    return changed((record) => ({ ...record, clockShiftMs: 3_600_000 * (which % 99) }))
  if (what === 'waits no longer') return changed((record) => ({ ...record, seq: 2_000_000 + place }))
  if (what === 'joined')
    return one === other
      ? log
      : [...log, said('same as', { kept: one.id, duplicate: other.id, reason: 'one' }, one, place)]
  const withdrawals = log.filter((record) => record.kind === 'withdrawal')
  const back = withdrawals[which % withdrawals.length]
  return back === undefined ? log : [...log, withdrawalOf(back, place)]
}

const anyStep: fc.Arbitrary<Step> = fc.record({
  what: fc.constantFrom(...whatBecomes),
  kind: fc.constantFrom(...kinds),
  which: fc.nat(10_000),
})

describe('gatherSince(before, file)', () => {
  test('gives what gathering anew gives, whatever became of the log in between', () => {
    let kept = 0
    fc.assert(
      fc.property(
        fc.array(anyStep, { minLength: 3, maxLength: 8 }),
        fc.shuffledSubarray(demo, { maxLength: 40 }),
        (steps, later) => {
          const missing = [...later]
          let log: readonly HeldRecord[] = demo.filter((record) => !missing.includes(record))
          let before: Before
          for (const [place, step] of steps.entries()) {
            const file = foldTeamFile(log)
            const facts = gathered(before, file)
            expect(facts).toEqual(gathered(undefined, file))
            const known = new Set(before?.facts.flatMap(({ cases }) => cases))
            kept += facts.flatMap(({ cases }) => cases).filter((one) => known.has(one)).length
            before = { file, facts }
            log = after(log, missing, step, place)
          }
        },
      ),
      { seed: 20261130, numRuns: 10 },
    )
    // It says nothing where everything was gathered anew each time.
    expect(kept).toBeGreaterThan(500)
  })

  test('after one new record only the cases of its furnace are worked out anew', () => {
    const file = foldTeamFile(demo)
    const facts = gathered(undefined, file)
    const ending = demo.findLast(({ kind }) => kind === 'ending')!
    const more = foldTeamFile([
      ...demo,
      { ...ending, id: '01990000-0000-7000-8000-000000000000', seq: 1_000_000 },
    ])
    const furnaceId = furnaceOf(demo)(ending)
    const anew = gathered({ file, facts }, more)
    expect(anew).not.toEqual(facts)
    const known = new Set(facts.flatMap(({ cases }) => cases))
    for (const { cases } of anew)
      for (const one of cases) expect(known.has(one)).toBe(one.furnaceId !== furnaceId)
    // And back, as where it waited on this device and was refused.
    expect(gathered({ file: more, facts: anew }, file)).toEqual(facts)
  })

  test('what names another furnace than its case does, since a join was taken back, is of both', () => {
    const read = demo.find(
      ({ kind, body }) => kind === 'reading' && body.caseId !== undefined && body.when === 'as found',
    )!
    const { caseId } = read.body
    const ofCase = demo.find(({ id }) => id === caseId)!
    const other = demo.find(({ kind, id }) => kind === 'furnace' && id !== ofCase.body.furnaceId)!
    const join = said('same as', { kept: other.id, duplicate: ofCase.body.furnaceId, reason: 'one' }, read, 1)
    const meanwhile = {
      ...said('reading', { ...read.body, furnaceId: other.id }, read, 2),
      version: read.version,
    }
    // The only reading of the case, so that its fact hangs on it.
    const log = [
      ...demo.filter(({ kind, body }) => kind !== 'reading' || body.caseId !== caseId),
      join,
      meanwhile,
      withdrawalOf(join, 3),
    ]
    const file = foldTeamFile(log)
    const facts = gathered(undefined, file)
    const isRead = (of: TeamFacts) =>
      of.flatMap(({ cases }) => cases).find(({ id }) => id === caseId)?.readBefore
    expect(isRead(facts)).toBe(true)
    const without = foldTeamFile([...log, withdrawalOf(meanwhile, 4)])
    const anew = gathered({ file, facts }, without)
    expect(isRead(anew)).toBe(false)
    expect(anew).toEqual(gathered(undefined, without))
  })

  test('after the lines of an import every fact is kept', () => {
    const file = foldTeamFile(demo)
    const facts = gathered(undefined, file)
    const lines = { importId: demo[0]!.id, lines: [{ row: 2, record: demo[1]!.id }] }
    const more = foldTeamFile([...demo, said('imported lines', lines, demo[0]!, 1)])
    const known = new Set(facts.flatMap(({ cases }) => cases))
    const kept = gathered({ file, facts }, more).flatMap(({ cases }) => cases)
    expect(kept.filter((one) => known.has(one))).toHaveLength(known.size)
  })

  test('of the kinds that are rare, whichever record is withdrawn', () => {
    const file = foldTeamFile(demo)
    const facts = gathered(undefined, file)
    const rare = demo.filter(
      ({ kind }) => !besideTheFacts.has(kind) && demo.filter((other) => other.kind === kind).length <= 20,
    )
    let changed = 0
    for (const one of rare) {
      const without = foldTeamFile([...demo, withdrawalOf(one, 1)])
      const anew = gathered(undefined, without)
      expect(gathered({ file, facts }, without)).toEqual(anew)
      if (JSON.stringify(anew) !== JSON.stringify(facts)) changed += 1
    }
    expect(changed).toBeGreaterThan(10)
  })

  test('the kinds of which no fact is made are looked at by none', () => {
    const asked = new Set<PropertyKey>()
    const asking = <Held extends object>(of: Held) =>
      new Proxy(of, {
        get(target, field) {
          asked.add(field)
          return Reflect.get(target, field)
        },
      })
    const file = foldTeamFile(demo)
    gathered(undefined, asking(file))
    const kindsAsked = new Set(
      [...file.records.values()]
        .filter(({ entry }) =>
          [...asked].some((field) => {
            const entries: unknown = Reflect.get(file, field)
            return field !== 'records' && entries instanceof Map && entries.get(entry.id) === entry
          }),
        )
        .map(({ kind }) => kind),
    )
    expect(kindsAsked).toContain('gauge')
    expect([...kindsAsked].filter((kind) => besideTheFacts.has(kind))).toEqual([])
  })

  test('once another picture is held, every fact is made anew: it may be the proof of a rating', () => {
    const file = foldTeamFile(demo)
    const facts = gathered(undefined, file)
    const known = new Set(facts.flatMap(({ cases }) => cases))
    const more = foldTeamFile(demo, new Set(['a'.repeat(64)]))
    const anew = gathered({ file, facts }, more)
    expect(anew).toEqual(gathered(undefined, more))
    expect(anew.flatMap(({ cases }) => cases).some((one) => known.has(one))).toBe(false)
  })
})
