import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { recordId } from '../fields'

/** One person's own settings: the newest record of its author counts. */
export const preferenceBody = z.strictObject({
  unit: z.enum(['inH2O', 'Pa', 'mbar']),
  theme: z.enum(['light', 'dark', 'system']),
  gaugeId: recordId.optional(),
})

export type PreferenceBody = z.infer<typeof preferenceBody>

export const preference = defineKind<PreferenceBody>({
  kind: 'preference',
  version: 1,
  versions: { 1: preferenceBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => (body.gaugeId === undefined ? [] : [body.gaugeId]),
  mayWithhold: [],
})
