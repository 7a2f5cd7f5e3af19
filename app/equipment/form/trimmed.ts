/**
 * A body with the blanks at both ends of every text taken off, at every depth: nobody means them.
 *
 *   trimmed({ name: ' Larkfell 2 ', modelPatterns: ['LF2-* '] })  // { name: 'Larkfell 2', modelPatterns: ['LF2-*'] }
 */
export const trimmed = (body: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(body).map(([key, value]) => [key, trimmedValue(value)]))

function trimmedValue(value: unknown): unknown {
  if (typeof value === 'string') return value.trim()
  if (Array.isArray(value)) return value.map(trimmedValue)
  if (typeof value === 'object' && value !== null) return trimmed(value as Record<string, unknown>)
  return value
}
