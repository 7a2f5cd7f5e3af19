import { z } from 'zod'
import { defineKind, roles } from '@/lib/records/envelope'
import { part } from '@/lib/records/kinds/part'
import { withdrawal } from '@/lib/records/kinds/withdrawal'
import type { Kinds } from '@/lib/server/log/judge'

const recordId = z.uuidv7()

/** Says something, perhaps about other records, and can hold a name that a manager may withhold. */
const remark = defineKind<{ text: string; about?: string[] }>({
  kind: 'remark',
  version: 2,
  versions: {
    1: z.strictObject({ text: z.string() }),
    2: z.strictObject({
      text: z.string('A remark must be text.').max(5_000, 'A remark holds at most 5,000 characters.'),
      about: z.array(recordId).optional(),
      saidBy: z.string().optional(),
      nested: z.looseObject({ sizes: z.array(z.number()).optional() }).optional(),
    }),
  },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => body.about ?? [],
  refusedBy: (body, lookup, author) =>
    body.about?.some((id) => lookup(id)?.body.text === 'closed') && author.role !== 'manager'
      ? { rule: 'closed', sentence: 'Nothing is said of a closed remark.' }
      : undefined,
  mayWithhold: ['saidBy', 'text'],
})

/** Only managers add it, and only managers see it. */
const memo = defineKind<{ text: string }>({
  kind: 'memo',
  version: 1,
  versions: { 1: z.strictObject({ text: z.string() }) },
  mayAdd: ['manager'],
  maySee: ['manager'],
  refersTo: () => [],
  mayWithhold: [],
})

/** A withholding without a rule of its own, so that the log's own rule shows. */
const withholding = defineKind<{ record: string; fields: string[] }>({
  kind: 'withholding',
  version: 1,
  versions: {
    1: z.strictObject({ record: recordId, fields: z.array(z.string()).min(1), reason: z.string() }),
  },
  mayAdd: ['manager'],
  maySee: roles,
  refersTo: (body) => [body.record],
  mayWithhold: [],
})

/** Kinds whose own rules let everything pass: what is refused here, the database refuses. */
const unruled = (kind: string, field: string) =>
  defineKind<Record<string, string | undefined>>({
    kind,
    version: 1,
    versions: { 1: z.looseObject({}) },
    mayAdd: roles,
    maySee: roles,
    refersTo: (body) => [body[field]].filter((id) => id !== undefined),
    mayWithhold: [],
  })

const repair = unruled('repair', 'fittedPart')
const report = unruled('report', 'readOffPart')

const maker = defineKind<{ name: string }>({
  kind: 'maker',
  version: 1,
  versions: { 1: z.strictObject({ name: z.string() }) },
  mayAdd: roles,
  maySee: roles,
  refersTo: () => [],
  mayWithhold: [],
})

export const smallKinds: Kinds = Object.fromEntries(
  [remark, memo, withholding, withdrawal, part, maker, repair, report].map((kind) => [kind.kind, kind]),
)
