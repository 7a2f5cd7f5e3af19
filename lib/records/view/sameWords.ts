import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import { withholdableFields } from '../withholdable'
import { savedTogether } from './savedTogether'

type Body = Readonly<Record<string, unknown>>

/** A field of another record that holds the same words. */
export type SameWords = { kind: string; entry: Entry<Record<string, unknown>>; field: string; words: string }

/** By what a call can be found again, where a record names it. */
const referenceOf = (body: Body): string | undefined => {
  const own = body.reference ?? (body.proof as Body | undefined)?.reference
  return typeof own === 'string' ? own : undefined
}

/**
 * Where the words of some fields of a record stand once more, so that taking them out of one does not leave them in
 * another: in what was saved in one step with it, or names the same reference of a call. Only fields that may be
 * withheld and are not yet are named; what waits on the device is in nobody’s log yet.
 *
 * @param fields of the record, whose words shall go
 */
export function sameWordsElsewhere(file: TeamFile, id: string, fields: readonly string[]): SameWords[] {
  const record = file.records.get(id)?.entry
  if (record === undefined) return []
  const going = fields.flatMap((field) => textIn(record.body, field) ?? [])
  if (going.length === 0) return []
  const reference = referenceOf(record.body)
  const isOfOneCall = (other: Entry<Body>) =>
    savedTogether(other, record) || (reference !== undefined && referenceOf(other.body) === reference)
  return [...file.records.values()].flatMap(({ kind, entry }) =>
    entry.id === id || entry.waiting || !isOfOneCall(entry)
      ? []
      : withholdableFields(kind).flatMap((field): SameWords[] => {
          const words = textIn(entry.body, field)
          const isGone = entry.withheld?.fields.includes(field) ?? false
          return words !== undefined && !isGone && going.some((text) => holds(words, text))
            ? [{ kind, entry, field, words }]
            : []
        }),
  )
}

function textIn(body: Body, field: string): string | undefined {
  const text = body[field]
  return typeof text === 'string' && text.trim() !== '' ? text.trim() : undefined
}

const plain = (text: string) => text.toLowerCase().replaceAll(/\s+/g, ' ').trim()

const holds = (words: string, text: string): boolean => plain(words).includes(plain(text))
