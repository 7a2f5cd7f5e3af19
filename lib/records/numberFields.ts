import './withoutEval'
import { z } from 'zod'
import { recordKinds } from './registry'

/** A schema as JSON Schema (draft 2020-12), as far as it is walked here. */
export type JsonSchema = {
  type?: string
  properties?: Record<string, JsonSchema>
  items?: JsonSchema
  anyOf?: JsonSchema[]
  oneOf?: JsonSchema[]
  allOf?: JsonSchema[]
}

/** The schema of what is kept in the body of a record of a kind and version. */
export const bodySchema = (schema: z.ZodType): JsonSchema =>
  z.toJSONSchema(schema, { io: 'input' }) as JsonSchema

/** The names of every field that holds a number, in any kind and version of record. */
export function numberFields(): string[] {
  const found = new Set<string>()
  const walk = (schema: JsonSchema, field: string): void => {
    if (schema.type === 'number' || schema.type === 'integer') found.add(field)
    for (const [name, inner] of Object.entries(schema.properties ?? {})) walk(inner, name)
    if (schema.items !== undefined) walk(schema.items, field)
    for (const inner of [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])])
      walk(inner, field)
  }
  for (const { versions } of Object.values(recordKinds))
    for (const schema of Object.values(versions)) walk(bodySchema(schema), '')
  return [...found].sort()
}
