import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { recordId } from '../fields'

/** How many records one of these names at most: few enough for one request, many enough for few of them. */
export const mostImportedLines = 400

/**
 * Which records were made of which rows of an old list. It is said before them, so that none of them is ever in the
 * log without belonging to its import.
 */
export const importedLinesBody = z.strictObject({
  importId: recordId,
  lines: z
    .array(
      z.strictObject({
        /** The row of the file as a spreadsheet counts it: the head is 1. */
        row: z.int().min(1).max(1_000_001),
        record: recordId,
      }),
    )
    .min(1)
    .max(500),
})

export type ImportedLinesBody = z.infer<typeof importedLinesBody>

export const importedLines = defineKind<ImportedLinesBody>({
  kind: 'imported lines',
  version: 1,
  versions: { 1: importedLinesBody },
  // Whoever may no longer begin an import still ends the one that was begun: only its own author's lines count.
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.importId],
  refusedBy: (body, lookup) => {
    if (lookup(body.importId)?.kind !== 'import')
      return {
        rule: 'it belongs to an import',
        sentence: 'The import that it names is none. Begin the import again from its file.',
      }
    const there = body.lines.find(({ record }) => lookup(record) !== undefined)
    return there === undefined
      ? undefined
      : {
          rule: 'an import names new records only',
          sentence: `The record of row ${there.row} is in the log already, and an import never takes over what others recorded. Begin the import again from its file.`,
        }
  },
  mayWithhold: [],
})
