import type { RecordKind } from '@/lib/records/envelope'
import { unitOfField } from '@/lib/records/fieldUnits'
import { bodySchema, type JsonSchema } from '@/lib/records/numberFields'
import type { Cell } from './csv'

/** A column of a kind's table: the way to its field in a body, and what it is called. */
export type Column = { path: readonly string[]; name: string }

/** The columns of a kind: every field of every version that was ever released, in the order of the schemas. */
export function columnsOf({ versions }: RecordKind): Column[] {
  const found = new Map<string, Column>()
  const add = (path: readonly string[]): void => {
    const dotted = path.join('.')
    const unit = unitOfField(path.at(-1) ?? '')
    found.set(dotted, { path, name: unit === undefined || unit === '1' ? dotted : `${dotted} [${unit}]` })
  }
  const walk = (schema: JsonSchema, path: readonly string[]): void => {
    const unions = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])]
    for (const inner of unions) walk(inner, path)
    for (const [name, inner] of Object.entries(schema.properties ?? {})) walk(inner, [...path, name])
    if (unions.length === 0 && schema.properties === undefined && path.length > 0) add(path)
  }
  for (const schema of Object.values(versions)) walk(bodySchema(schema), [])
  return [...found.values()]
}

/** What a body holds at a path, as a cell: a list of plain values with bars between, anything deeper as JSON. */
export function cellAt(body: Record<string, unknown>, path: readonly string[]): Cell {
  const value = path.reduce<unknown>(
    (at, name) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[name] : undefined),
    body,
  )
  if (value === undefined || value === null) return undefined
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value
  const isPlain = (item: unknown) => typeof item === 'string' || typeof item === 'number'
  return Array.isArray(value) && value.every(isPlain) ? value.join(' | ') : JSON.stringify(value)
}
