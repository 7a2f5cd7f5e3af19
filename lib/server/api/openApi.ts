import { z } from 'zod'
import { type Operation, operations } from './operations'

type Json = Record<string, unknown>

/** Statuses that every operation has, and when. */
const everywhere: Readonly<Record<number, string>> = {
  400: 'What was sent can’t be understood; the message says what',
  401: 'No token came with it, or one that has ended',
  429: 'It was asked too often; Retry-After says how many seconds to wait',
}

const problem = z.object({
  ok: z.literal(false),
  problem: z.object({
    code: z.string().describe('For the program'),
    message: z.string().describe('A sentence for the person who must act'),
  }),
})

/** The HTTP API of office programs as an OpenAPI document (OpenAPI Specification 3.1.1), made from its own schemas. */
export function openApiDocument(): Json {
  const paths: Record<string, Json> = {}
  for (const operation of operations) {
    paths[operation.path] = {
      ...paths[operation.path],
      [operation.method.toLowerCase()]: documented(operation),
    }
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'Inchwater, for office programs',
      version: '1',
      description:
        'Every answer is JSON: { ok: true, value } or { ok: false, problem: { code, message } }. A manager makes the token, with a role and a last day.',
    },
    security: [{ token: [] }],
    paths,
    components: {
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: 'Made under Tokens, shown once' },
      },
      schemas: { Problem: schemaOf(problem) },
    },
  }
}

function documented({
  id,
  summary,
  description,
  query,
  body,
  answer,
  right,
  refusals,
  method,
}: Operation): Json {
  const answered = schemaOf(z.object({ ok: z.literal(true), value: answer }))
  const forbidden: Record<number, string> =
    method === 'GET' ? {} : { 403: 'A page of another address sent it' }
  return {
    operationId: id,
    summary,
    description,
    ...(query === undefined ? {} : { parameters: parametersOf(query) }),
    ...(body === undefined ? {} : { requestBody: { required: true, content: json(schemaOf(body)) } }),
    responses: {
      ...mapped(right, (words) => ({ description: words, content: json(answered) })),
      ...mapped({ ...everywhere, ...forbidden, ...refusals }, (words) => ({
        description: words,
        content: json({ $ref: '#/components/schemas/Problem' }),
      })),
    },
  }
}

const json = (schema: Json): Json => ({ 'application/json': { schema } })

const mapped = (entries: Readonly<Record<number, string>>, to: (words: string) => Json): Json =>
  Object.fromEntries(Object.entries(entries).map(([status, words]) => [status, to(words)]))

function parametersOf(query: z.ZodObject): Json[] {
  const { properties = {}, required = [] } = schemaOf(query) as {
    properties?: Record<string, Json>
    required?: string[]
  }
  return Object.entries(properties).map(([name, { description, ...schema }]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    ...(description === undefined ? {} : { description }),
    schema,
  }))
}

/** OpenAPI 3.1 takes JSON Schema 2020-12 as it is. */
function schemaOf(schema: z.ZodType): Json {
  const { $schema: _named, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12' })
  return rest
}
