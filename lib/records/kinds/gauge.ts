import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, note, pressureUnit } from '../fields'

const percent = z.number().min(0).max(100)

/**
 * A manometer of the team, with the accuracy form that its sheet prints. Span and resolution are in pascals;
 * `unit` is the one it displays.
 */
export const gaugeBody = z
  .strictObject({
    name: line('The gauge’s name', 40),
    unit: pressureUnit,
    percentOfReading: percent.optional(),
    /** Counts are steps of the resolution. */
    counts: z.number().min(0).max(1000).optional(),
    percentOfSpan: percent.optional(),
    combine: z.enum(['plus', 'greater']),
    spanPascals: z.number().positive('The span must be more than zero.').max(1e6),
    resolutionPascals: z.number().positive('The resolution must be more than zero.').max(1e5),
    calibrationDue: day.optional(),
    note: note.optional(),
  })
  .refine((gauge) => gauge.resolutionPascals < gauge.spanPascals, {
    path: ['resolutionPascals'],
    message: 'The resolution is coarser than the whole span. Check the two.',
  })

export type GaugeBody = z.infer<typeof gaugeBody>

export const gauge = defineKind<GaugeBody>({
  kind: 'gauge',
  version: 1,
  versions: { 1: gaugeBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: () => [],
  mayWithhold: [],
})
