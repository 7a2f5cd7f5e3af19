const hexDigits = '0123456789abcdef'

function hex(random: () => number, digits: number): string {
  let drawn = ''
  for (let digit = 0; digit < digits; digit++) drawn += hexDigits[Math.floor(random() * 16)]!
  return drawn
}

/**
 * A UUID, version 7 (RFC 9562, 5.7: 48 bits of milliseconds, then chance), whose chance comes from a seed.
 *
 * @param atMs milliseconds since 1970, whole
 * @example seededId(Date.parse('2025-01-01T00:00:00Z'), seededRandom(1)).slice(0, 15) // '01941f29-7c00-7'
 */
export function seededId(atMs: number, random: () => number): string {
  const time = atMs.toString(16).padStart(12, '0')
  const variant = '89ab'[Math.floor(random() * 4)]
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(random, 3)}-${variant}${hex(random, 3)}-${hex(random, 12)}`
}
