import fc from 'fast-check'
import type { RecordEnvelope, Role } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { neverKept, oddKeys, oddValue } from './oddJson'

/** A record that may have lost its shape: what a device with a fault in it could send. */
type Odd = Record<string, unknown>

/** The records on file that new ones refer to, who sends, and whose records are not theirs. */
export type Scene = {
  onFile: readonly RecordEnvelope[]
  sender: { id: string; role: Role }
  otherPerson: string
}

/** One change after which a record cannot be stored, whatever else was changed before. */
type Spoiling = (record: Odd, model: RecordEnvelope, scene: Scene) => unknown

/** No field of any kind takes one of these. */
export const neverFits: readonly unknown[] = [null, { odd: true }, [null], [{ odd: true }]]

/** The fields that a kind asks for whatever the others say: its schema misses them in an empty body. */
export const askedFor = ({ kind, version }: Pick<RecordEnvelope, 'kind' | 'version'>): string[] =>
  recordKinds[kind]!.versions[version]!.safeParse({}).error?.issues.map((issue) => String(issue.path[0])) ??
  []

/** The fields of a record by which it refers to others. */
const referringFields = ({ kind, body }: RecordEnvelope): string[] => {
  const named = new Set(recordKinds[kind]!.refersTo(body))
  return Object.keys(body).filter((field) => [body[field]].flat().some((id) => named.has(String(id))))
}

const bodyOf = ({ body }: Odd): Odd => (typeof body === 'object' && body !== null ? { ...body } : {})
const withField = (record: Odd, field: string, value: unknown): Odd => ({
  ...record,
  body: { ...bodyOf(record), [field]: value },
})
const without = (from: Odd, field: string): Odd =>
  Object.fromEntries(Object.entries(from).filter(([name]) => name !== field))

/** Of no record. */
const nowhere = '0192ffff-ffff-7fff-bfff-ffffffffffff'

const oneOf = <T>(values: readonly T[], pick: number): T => values[pick % values.length]!

/** Bodies of the right shape that a rule refuses, because of what the records are that they name. */
function againstItsRule(onFile: readonly RecordEnvelope[]): [kind: string, body: Odd][] {
  const first = (kind: string) => onFile.find((record) => record.kind === kind)!
  const generic = onFile.find(({ body }) => body.class === 'general-purpose')!.id
  const elsewhere = { caseId: first('maker').id, visitId: first('visit').id }
  return [
    ['case', { ...first('case').body, furnaceId: first('maker').id }],
    ['visit', { ...first('visit').body, caseId: first('visit').id }],
    ...['finding', 'reading', 'combustion test', 'ending', 'switch check', 'danger answer'].map(
      (kind): [string, Odd] => [kind, { ...first(kind).body, ...elsewhere }],
    ),
    ['finding', { ...first('finding').body, finding: '__proto__' }],
    ['finding', { ...first('finding').body, finding: 'constructor' }],
    ['finding', { ...first('finding').body, value: 'toString' }],
    ['ending', { ...first('ending').body, mainCause: 'bad luck' }],
    ['ending', { ...first('ending').body, contributingCause: '__proto__' }],
    ['fitted part', { ...first('fitted part').body, furnaceId: first('maker').id }],
    ['shut-down notice', { ...first('shut-down notice').body, caseId: first('maker').id }],
    ['lifting', { ...first('lifting').body, noticeId: first('ending').id }],
    ['baseline', { ...first('baseline').body, readingId: first('finding').id }],
    ['asks too', { ...first('asks too').body, requestId: first('maker').id }],
    ['promise', { ...first('promise').body, requestId: first('report').id }],
    ['organisation', { ...first('organisation').body, makerIds: [first('part').id] }],
    ['call attempt', { ...first('call attempt').body, organisationId: first('maker').id }],
    ['call attempt', { ...first('call attempt').body, requestIds: [first('case').id] }],
    ['warranty answer', { ...first('warranty answer').body, repairId: first('case').id }],
    ['warranty answer', { ...first('warranty answer').body, organisationId: first('maker').id }],
    ['answer seen', { ...first('answer seen').body, reportIds: [first('gauge').id] }],
    ['repair', { ...first('repair').body, fittedPart: generic }],
    ['report', { ...first('report').body, readOffPart: generic }],
    ['report', { ...first('report').body, readOffPart: first('maker').id }],
    ['supersession', { ...first('supersession').body, newPartId: generic }],
    ['same as', { ...first('same as').body, duplicate: first('maker').id }],
    ['settlement', { ...first('settlement').body, evidenceReportId: first('report').id }],
    ['withdrawal', { record: first('withholding').id, reason: 'It should be seen.' }],
    ['withholding', { record: first('report').id, fields: ['pascals'], reason: 'It should not be seen.' }],
  ]
}

const spoilings: Record<string, (pick: number, odd: unknown) => Spoiling> = {
  'of another author':
    (pick) =>
    (record, _model, { otherPerson }) => ({
      ...record,
      author: oneOf([otherPerson, '', 'x'.repeat(65), null, 7, {}, '__proto__'], pick),
    }),
  'an id that is none': (pick) => (record) => ({
    ...record,
    id: oneOf(
      ['', '7', nowhere.slice(1), `${nowhere}0`, '01920000-0000-4000-8000-000000000001', null, 7, [nowhere]],
      pick,
    ),
  }),
  'an id that is on file with other content':
    (pick) =>
    (record, _model, { onFile }) => ({
      ...record,
      id: oneOf(onFile, pick).id,
      device: 'another device',
    }),
  'a kind that is none': (pick) => (record) => ({
    ...record,
    kind: oneOf([...oddKeys, 'Maker', 'maker ', 'makers', 'x'.repeat(41), null, 7, ['maker']], pick),
  }),
  'a version that is none': (pick) => (record) => ({
    ...record,
    version: oneOf([0, -1, 1.5, 999, 1001, 1e21, '1', null, true, '__proto__'], pick),
  }),
  'a field that no kind knows': (pick, odd) => (record) => withField(record, oneOf(oddKeys, pick), odd),
  'a name in the envelope that is not known': (pick, odd) => (record) => ({
    ...record,
    [oneOf([...oddKeys, 'seq', 'receivedAt', 'clockShiftMs', 'withheld'], pick)]: odd,
  }),
  'a field with what fits nowhere': (pick) => (record, model) =>
    withField(record, oneOf(Object.keys(model.body), pick), oneOf(neverFits, pick >> 8)),
  'a field with what is never kept': (pick) => (record, model) =>
    withField(record, oneOf(Object.keys(model.body), pick), oneOf(neverKept, pick >> 8)),
  'a field that is asked for and missing': (pick) => (record, model) => ({
    ...record,
    kind: model.kind,
    version: model.version,
    body: without(bodyOf(record), oneOf(askedFor(model), pick)),
  }),
  'a reference to nothing': (pick) => (record, model) => refer(record, model, pick, nowhere),
  'a reference to itself': (pick) => (record, model) => refer(record, model, pick, record.id),
  'said after it was sent, or at no moment': (pick) => (record) => ({
    ...record,
    saidAt: oneOf(
      [
        '9999-12-31T23:59:59Z',
        '9999-12-31T23:59:59.999-23:59',
        '2026-02-30T12:00:00Z',
        '2026-01-12T25:00:00Z',
        '2026-01-12T12:00:00',
        '2026-01-12',
        'now',
        '',
        0,
        null,
      ],
      pick,
    ),
  }),
  'what the sender’s role may not add, or nobody’s may':
    () =>
    (record, _model, { sender }) => ({
      ...record,
      kind: Object.values(recordKinds).find(({ mayAdd }) => !mayAdd.includes(sender.role))?.kind ?? 'decree',
    }),
  'what the rule of its own kind refuses':
    (pick) =>
    (record, _model, { onFile }) => {
      const [kind, body] = oneOf(againstItsRule(onFile), pick)
      return { ...record, kind, version: onFile.find((each) => each.kind === kind)!.version, body }
    },
  'a body that is none': (pick) => (record) => ({
    ...record,
    body: oneOf([null, [], 'body', 7, ...neverKept], pick),
  }),
  'a part of the envelope missing': (pick) => (record) =>
    without(record, oneOf(['id', 'kind', 'version', 'body', 'saidAt', 'author', 'device'], pick)),
  'no record at all': (pick) => () => oneOf([null, true, 7, '', 'record', [], [[]], {}, ...neverKept], pick),
}

/** Puts a reference into a field that holds one; a kind without any is turned into one that has. */
function refer(record: Odd, model: RecordEnvelope, pick: number, id: unknown): Odd {
  const fields = referringFields(model)
  if (fields.length === 0) return { ...record, kind: 'equipment range', body: { makerId: id } }
  const field = oneOf(fields, pick)
  return withField(record, field, Array.isArray(model.body[field]) ? [id] : id)
}

/** Any change at all, sensible or not. It may leave the record as good as it was. */
const change = fc
  .tuple(fc.constantFrom('set', 'drop', 'add', 'envelope'), fc.nat(), fc.constantFrom(...oddKeys), oddValue)
  .map(([how, pick, key, odd]) => (record: Odd, model: RecordEnvelope): Odd => {
    const field = oneOf(Object.keys(model.body), pick)
    if (how === 'set') return withField(record, field, odd)
    if (how === 'drop') return { ...record, body: without(bodyOf(record), field) }
    if (how === 'add') return withField(record, key, odd)
    return { ...record, [oneOf(['kind', 'version', 'body', 'saidAt', 'device'], pick)]: odd }
  })

const spoiling = fc
  .tuple(fc.constantFrom(...Object.keys(spoilings)), fc.nat(), oddValue)
  .map(([what, pick, odd]) => spoilings[what]!(pick, odd))

/**
 * Records that are nearly right and can never be stored. Each is a record on file, said anew by the sender; up to
 * three changes of any sort; and, last, one spoiling, so that no change after it can make it good again.
 */
export const spoiledRecord = (scene: Scene): fc.Arbitrary<unknown> =>
  fc
    .tuple(
      fc.constantFrom(...scene.onFile),
      fc.uuid({ version: 7 }),
      fc.array(change, { maxLength: 3 }),
      spoiling,
    )
    .map(([model, id, changes, spoil]) => {
      const record: Odd = { ...model, id, author: scene.sender.id }
      return spoil(
        changes.reduce((changed, apply) => apply(changed, model), record),
        model,
        scene,
      )
    })
