import type { ReactNode } from 'react'
import type { Fact } from '../ui/paper/Facts'
import { type Field, fieldOf } from './recordWords'
import { type About, record } from './shown'

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}$/

/** Every field of a body in the reader's words and unit, in the order in which it was written; other records linked. */
export const bodyFacts = (kind: string, body: Readonly<Record<string, unknown>>, about: About): Fact[] =>
  Object.entries(body).map(([key, value]) => {
    const field = fieldOf(kind, key)
    const words = kind === 'withholding' && key === 'fields' ? withheldWords(value, body, about) : undefined
    return { key, name: field.name, value: words ?? shown(value, field, kind, about) }
  })

function shown(value: unknown, field: Field, kind: string, about: About): ReactNode {
  if (Array.isArray(value)) {
    return value.length === 0
      ? 'None'
      : [...value.entries()].map(([place, each]) => <div key={place}>{shown(each, field, kind, about)}</div>)
  }
  if (typeof value === 'boolean') return value ? 'Yes' : 'No'
  if (field.show !== undefined) return field.show(value, about)
  if (typeof value === 'object' && value !== null) return parts(value, field, kind, about)
  return typeof value === 'string' && uuid.test(value) ? record(value, about) : String(value)
}

function parts(value: object, field: Field, kind: string, about: About): ReactNode {
  const entries = Object.entries(value)
  if (entries.length === 0) return 'Any'
  return entries.map(([key, part]) => {
    const inner = field.fields?.[key] ?? fieldOf(kind, key)
    return (
      <div key={key}>
        {inner.name}: {shown(part, inner, kind, about)}
      </div>
    )
  })
}

/** The fields that a withholding names, as they are called where they are withheld. */
function withheldWords(
  fields: unknown,
  { record }: Readonly<Record<string, unknown>>,
  about: About,
): ReactNode {
  const kind = about.kindOf(String(record)) ?? ''
  return Array.isArray(fields) ? fields.map((key) => fieldOf(kind, String(key)).name).join(', ') : undefined
}
