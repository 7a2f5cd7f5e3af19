import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note } from '../fields'

/** A maker of furnaces. */
export const makerBody = z.strictObject({ name: line('The maker’s name', 80), note: note.optional() })

export type MakerBody = z.infer<typeof makerBody>

export const maker = defineKind<MakerBody>({
  kind: 'maker',
  version: 1,
  versions: { 1: makerBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: () => [],
  mayWithhold: [],
})
