import './withoutEval'
import { z } from 'zod'
import { limitKinds } from '@/lib/core/vocabulary'
import { heights } from './heights'

/** Field schemas that several kinds of record share. Each message is a sentence for the person who typed. */

/** The id of another record. */
export const recordId = z.uuidv7('This must be the id of a record (UUID, version 7).')

/** One line of text: trimmed by the screens, never empty, no line breaks. */
export const line = (what: string, max = 120) =>
  z
    .string(`${what} is missing. Type it.`)
    .min(1, `${what} is empty. Type it, or leave the field out.`)
    .max(max, `${what} is longer than ${max} characters.`)
    .regex(/^[^\p{Cc}]*$/u, `${what} must be one line, without control characters.`)
    .regex(/\S/u, `${what} is empty. Type it, or leave the field out.`)

/** Notes: several lines, up to 10,000 characters. */
export const note = z
  .string('A note must be text.')
  .max(10_000, 'A note holds at most 10,000 characters. Split it in two.')

export const day = z.iso.date('Write the date as year-month-day, for instance 2026-01-12.')

export const metres = z
  .number('An elevation must be a number of metres.')
  .min(heights.lowest, 'No dry land lies lower than 500 m below the sea. Check the elevation.')
  .max(heights.highest, 'No furnace stands above 9,000 m. Check the elevation.')

export const codeRange = z.strictObject({
  from: line('The first code', 40).optional(),
  to: line('The last code', 40).optional(),
})

export const elevationBand = z
  .strictObject({ fromMetres: metres.optional(), toMetres: metres.optional() })
  .refine(
    (band) =>
      band.fromMetres === undefined || band.toMetres === undefined || band.fromMetres <= band.toMetres,
    'The elevation band ends below where it begins. Swap the two.',
  )

export const pressureUnits = ['inH2O', 'mmH2O', 'Pa', 'hPa', 'kPa', 'mbar', 'inHg', 'psi'] as const
export const pressureUnit = z.enum(pressureUnits, 'Choose the unit from the list.')

/** A magnitude in pascals. Sense is kept apart, so it is never negative. */
export const magnitude = z
  .number('A pressure must be a number.')
  .min(0, 'A magnitude is never negative: say suction or pressure apart.')
  .max(1e6, 'A pressure above 1,000,000 Pa is no furnace pressure.')

export const limitKind = z.enum(limitKinds)
