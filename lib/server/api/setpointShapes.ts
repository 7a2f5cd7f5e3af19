import { z } from 'zod'
import { limitKinds, senses, sourceKinds } from '@/lib/core/vocabulary'

const numberText = (what: string) =>
  z.string().regex(/^-?\d{1,5}(\.\d{1,3})?$/, `${what} must be a number, with a point if it has decimals.`)

export const setpointQuery = z.strictObject({
  part: z
    .string()
    .min(1)
    .max(40)
    .optional()
    .describe('A part number of the switch; case, blanks and dashes aside'),
  position: z.string().min(1).max(64).optional().describe('The id of a switch position'),
  furnace: z.string().min(1).max(64).optional().describe('The id of a furnace; what is on file of it counts'),
  elevation: numberText('The elevation')
    .optional()
    .describe('Metres above the sea, where the furnace stands'),
  revision: z.string().min(1).max(40).optional().describe('The revision or series on the data plate'),
  serial: z.string().min(1).max(60).optional().describe('The serial number on the data plate'),
})

const value = z
  .object({
    pascals: z.number().describe('UCUM: Pa'),
    inchesOfWater: z.number().describe("UCUM: [in_i'H2O]; rounded to 3 decimals"),
    limit: z.enum(limitKinds).describe('nominal has a tolerance; maximum and minimum promise one side'),
    toleranceAbovePascals: z.number().optional(),
    toleranceBelowPascals: z.number().optional(),
  })
  .describe('A magnitude; its direction is “sense”')

const source = z.object({
  source: z.enum(sourceKinds),
  words: z.string().describe('As on the setpoint card: the source, and what lets somebody check it'),
  document: z
    .object({ name: z.string(), edition: z.string().optional(), page: z.string() })
    .optional()
    .describe('The document and page that it is read from'),
  call: z
    .object({ organisation: z.string(), reference: z.string() })
    .optional()
    .describe('Who was rung, and under which reference they find the call again'),
  saidBy: z.string().optional().describe('Who said it; “[withheld]” where a manager withheld that'),
  readBack: z.boolean().optional().describe('Whether the number was read back and confirmed'),
  holdsFor: z.string().describe('Which elevations, revisions and serials it says it covers'),
  saidOn: z.string().describe('The day on which the source said it, ISO 8601'),
  asWritten: z.string().describe('Letter for letter'),
  recordedBy: z.string(),
  report: z.string().describe('The id of the report'),
})

const action = z.enum(['closes', 'opens', 'not stated']).describe('closes: make point; opens: break point')

const common = {
  action,
  reasons: z.array(z.string()).describe('Why the level is what it is, and what would raise it'),
}

/**
 * No number without its standing, and none that depends on what is not known of the furnace: the three shapes leave no
 * fourth.
 */
const standing = z.union([
  z.strictObject({
    ...common,
    level: z.literal('Not on file'),
    ask: z.object({ words: z.string(), address: z.string() }).describe('How to ask for it'),
  }),
  z.strictObject({
    action,
    needs: z
      .array(z.enum(['elevation', 'revision', 'serial', 'part number']))
      .min(1)
      .describe('What to find out about the furnace: the number depends on it, so there is none until then'),
    words: z.string().describe('The same as a sentence'),
  }),
  z.strictObject({
    ...common,
    level: z.enum(['Verified', 'Supported', 'Unverified', 'In dispute']),
    asOf: z.string().describe('The newest date among its sources'),
    value,
    sense: z.enum(senses),
    sources: z.array(source).min(1),
    otherValues: z
      .array(z.object({ value, sources: z.array(source).min(1) }))
      .describe('Values that other sources name; while they dispute it, none may be relied on'),
  }),
])

export const setpointAnswer = z.object({
  caution: z.string(),
  setpoints: z.array(
    z.object({
      position: z.string().describe('The id of the switch position'),
      name: z.string(),
      range: z.string(),
      maker: z.string().optional(),
      parts: z
        .array(z.object({ partNumber: z.string(), replacedBy: z.string().optional() }))
        .describe('Factory part numbers, the oldest of a line first'),
      standings: z.array(standing).length(3),
      asks: z
        .array(z.string())
        .describe('What to find out about the furnace, because the answer depends on it'),
      dangers: z.array(z.string()).describe('Switches that were found here although they should not be'),
      address: z.string().describe('Where people open it'),
    }),
  ),
})

export type SetpointAnswer = z.infer<typeof setpointAnswer>
