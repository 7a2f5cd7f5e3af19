import { beforeEach, expect, test } from 'vitest'
import { recordKinds } from '@/lib/records/registry'
import { type Log, openLog } from '@/lib/server/log/openLog'
import { manager, noon, record, technician, withFreshLog } from './freshLog'

/** The log with the kinds that the program really has: do they and the database agree? */
const fresh = withFreshLog()
let log: Log
beforeEach(() => {
  log = openLog({ db: fresh.db, kinds: recordKinds, now: () => noon })
})
const said = (kind: string, body: Record<string, unknown>) => record({ kind, version: 1, body })
const add = (...records: unknown[]) => log.appendRecords({ sentAt: noon.toISOString(), records }, technician)

const maker = said('maker', { name: 'Quillon Example' })
const furnace = said('furnace', {
  siteLabel: 'Mill Lane 3',
  model: 'QX-80',
  fuel: 'natural gas',
  note: 'Ask Ulla.',
})
const part = (partClass: string, fieldAdjustable = false) =>
  said('part', {
    partNumber: 'QX-1001',
    class: partClass,
    fieldAdjustable,
    makerId: maker.id,
    positionIds: [],
    listedIn: 'Parts list QX, page 3',
  })
const repairWith = (fittedPart: string) =>
  said('repair', { furnaceId: furnace.id, done: 'Fitted a switch', fittedPart, on: '2026-01-12' })

test('rule 2 at the door: a general-purpose switch is no repair, the refusal says what to record instead, and that is taken', async () => {
  const generic = part('general-purpose', true)
  const [, , , refused] = await add(maker, furnace, generic, repairWith(generic.id))
  expect(refused).toMatchObject({
    outcome: 'refused',
    rule: 'no general-purpose switch',
    sentence: expect.stringContaining('Record it as found fitted, when and by whom'),
  })
  const found = said('found fitted', {
    furnaceId: furnace.id,
    partId: generic.id,
    printed: 'ADJ 0.1-1.0',
    what: 'adjustable or general-purpose switch',
    fittedWhen: 'today',
    fittedBy: 'us',
    foundOn: '2026-01-12',
  })
  expect(await add(found)).toMatchObject([{ outcome: 'stored' }])
})

test('rule 2 at the door: a factory part can be fitted, until its record is corrected to another class', async () => {
  const [factory, unknown] = [part('factory'), part('not known')]
  const correction = said('withdrawal', {
    record: factory.id,
    reason: 'Not listed there.',
    replacedBy: unknown.id,
  })
  const answers = await add(
    maker,
    furnace,
    factory,
    repairWith(factory.id),
    unknown,
    correction,
    repairWith(factory.id),
    repairWith(unknown.id),
  )
  expect(answers.map(({ outcome }) => outcome)).toEqual([...Array(6).fill('stored'), 'refused', 'refused'])
  for (const refused of answers.slice(6)) expect(refused).toMatchObject({ rule: 'no general-purpose switch' })
})

test('what a kind lets a manager withhold goes, and the rest does not', async () => {
  await add(furnace)
  const withhold = (...fields: string[]) =>
    log.appendRecords(
      {
        sentAt: noon.toISOString(),
        records: [
          record({
            kind: 'withholding',
            version: 1,
            author: manager.id,
            body: { record: furnace.id, fields, reason: 'A name got in.' },
          }),
        ],
      },
      manager,
    )
  expect(await withhold('model')).toMatchObject([{ rule: 'only personal data can be withheld' }])
  expect(await withhold('note')).toMatchObject([{ outcome: 'stored' }])
  expect(log.lookup(furnace.id)?.body).toMatchObject({ note: '[withheld]', model: 'QX-80' })
})

test('the names that the database’s guards and indexes go by are names of kinds', () => {
  const guards = fresh.db
    .prepare<[], string>("SELECT group_concat(sql, ' ') FROM sqlite_master WHERE sql LIKE '%$.kind%'")
    .pluck()
    .get()
  const named = [...(guards ?? '').matchAll(/(?:kind'?\)?"? (?:=|<>|IN) \(?)'([^']+)'(?:, '([^']+)')?/g)]
  const kinds = new Set(named.flatMap(([, one, two]) => [one, two]).filter((kind) => kind !== undefined))
  expect([...kinds].sort()).toEqual([
    'ending',
    'part',
    'photo',
    'repair',
    'report',
    'withdrawal',
    'withholding',
  ])
  for (const kind of kinds) expect(Object.keys(recordKinds)).toContain(kind)
})
