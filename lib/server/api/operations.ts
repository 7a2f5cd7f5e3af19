import { z } from 'zod'
import { uuidv7 } from '@/lib/records/envelope'
import { caseBody } from '@/lib/records/kinds/case'
import { setpointAnswer, setpointQuery } from './setpointShapes'

/** Something that an office program can ask: where, with what, and what it is answered. Route and document read it. */
export type Operation = {
  id: string
  method: 'GET' | 'POST'
  path: `/api/v1/${string}`
  summary: string
  /** More of it, in plain sentences. */
  description: string
  query?: z.ZodObject
  body?: z.ZodObject
  answer: z.ZodType
  /** The statuses of a right answer, and what each means. */
  right: Readonly<Record<number, string>>
  /** The statuses of a refusal of its own, beside those that every operation has. */
  refusals: Readonly<Record<number, string>>
}

export const askSetpoint = {
  id: 'askSetpoint',
  method: 'GET',
  path: '/api/v1/setpoint',
  summary: 'The setpoint of a switch, with its standing',
  description:
    'Asked by part number, by position, or by furnace (then every switch of its range is answered). A value never comes without its level, its sources and their dates. Where nothing is on file the level is “Not on file”, and “ask” says how to ask for it. The more is said about the furnace, the surer the answer: “asks” names what would change it. Where the number itself depends on it, “needs” says so in the place of level and value, as the setpoint card does.',
  query: setpointQuery,
  answer: setpointAnswer,
  right: { 200: 'What is on file, also when that is nothing for these switches' },
  refusals: {
    404: 'No such part, position or furnace is on file',
    422: 'The part is an adjustable or general-purpose switch, which has no setpoint for any furnace',
  },
} satisfies Operation

const furnaceOnFile = z.object({
  id: z.string(),
  siteLabel: z.string(),
  model: z.string().describe('Every character as the data plate prints it'),
  branch: z.string().optional(),
  serial: z.string().optional(),
  revision: z.string().optional(),
  elevationMetres: z.number().optional(),
})

export const findFurnaces = {
  id: 'findFurnaces',
  method: 'GET',
  path: '/api/v1/furnaces',
  summary: 'Furnaces on file by site label or serial number',
  description:
    'A part of the site label, or the whole serial number; case, blanks and dashes aside. At most 50, by site label; “more” says that there were others.',
  query: z.strictObject({
    site: z.string().min(1).max(80).optional().describe('A part of the site label'),
    serial: z.string().min(1).max(60).optional().describe('The serial number on the data plate'),
  }),
  answer: z.object({ furnaces: z.array(furnaceOnFile), more: z.boolean() }),
  right: { 200: 'The furnaces that fit; none is an answer too' },
  refusals: {},
} satisfies Operation

export const fileCase = {
  id: 'fileCase',
  method: 'POST',
  path: '/api/v1/cases',
  summary: 'File a case: a complaint on one furnace',
  description:
    'Goes through the same door as what people record, with the same rules and refusals, and is written down as said by the program. With an “id” (UUID, version 7) and the moment “saidAt” it may be sent again after a broken connection: it is stored once.',
  body: z
    .strictObject({
      ...caseBody.shape,
      id: uuidv7.optional(),
      saidAt: z.iso
        .datetime({ offset: true, error: 'Write the moment as ISO 8601 with its offset.' })
        .optional()
        .describe('When it was said, if not just now; always with “id”'),
    })
    .refine(({ id, saidAt }) => id === undefined || saidAt !== undefined, {
      path: ['saidAt'],
      message: 'With “id”, say “saidAt” as well: else the case would be another one when it is sent again.',
    }),
  answer: z.object({
    id: z.string(),
    seq: z.int().describe('Its number in the log'),
    outcome: z.enum(['stored', 'already stored']),
    address: z.string().describe('Where people open it'),
  }),
  right: { 200: 'It was stored before', 201: 'It is stored' },
  refusals: {
    404: 'The furnace is not on file',
    422: 'A rule refuses it; the message says which, why, and what to do instead',
    503: 'The log could not be written just now; send it again',
  },
} satisfies Operation

/** Everything that an office program can ask. A test holds it to the routes under app/api/v1. */
export const operations: readonly Operation[] = [askSetpoint, findFurnaces, fileCase]
