import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line } from '../fields'

/**
 * An old list that was taken over: one file, once. Its rows are records of their own, which `imported lines` name; one
 * withdrawal of this record takes all of them back.
 */
export const importBody = z.strictObject({
  fileName: line('The name of the file', 200),
  /** Of the file's bytes, in hexadecimal: whether it is the same file again. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'A file is named by the SHA-256 of its bytes.'),
  encoding: line('The encoding', 40),
  separator: z.enum(['comma', 'semicolon', 'tab', 'bar']),
  /** How many rows the file has, its head and empty ones not counted. */
  rows: z.int().min(1, 'A file without rows has nothing to take over.').max(1_000_000),
  /** How many of them were taken over. */
  taken: z.int().min(1, 'No row of the file can be taken over.').max(1_000_000),
})

export type ImportBody = z.infer<typeof importBody>

export const importKind = defineKind<ImportBody>({
  kind: 'import',
  version: 1,
  versions: { 1: importBody },
  mayAdd: ['manager'],
  maySee: roles,
  refersTo: () => [],
  mayWithhold: [],
})
