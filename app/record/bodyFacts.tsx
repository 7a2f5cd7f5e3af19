import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Fact } from '../ui/paper/Facts'
import { recordTitle } from './recordTitle'

/** Every field of a body, in the order in which it was written, other records named and linked. */
export function bodyFacts(body: Record<string, unknown>, file: TeamFile): Fact[] {
  return Object.entries(body).map(([key, value]) => ({
    key,
    name: fieldWords(key),
    value: shown(value, file),
  }))
}

/** `toleranceAbove` as `Tolerance above`. */
export const fieldWords = (key: string): string => {
  const words = key.replace(/Id$/, '').replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

function shown(value: unknown, file: TeamFile): Fact['value'] {
  if (typeof value === 'string') {
    const named = file.records.get(value)
    return named === undefined ? (
      value
    ) : (
      <a href={`/record?id=${value}`}>{recordTitle(named.kind, named.entry.body)}</a>
    )
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) {
    return value.length === 0
      ? 'none'
      : value.map((each) => <div key={String(each)}>{shown(each, file)}</div>)
  }
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value)
    return parts.length === 0
      ? 'all'
      : parts.map(([key, part]) => (
          <div key={key}>
            {fieldWords(key)}: {shown(part, file)}
          </div>
        ))
  }
  return String(value)
}
