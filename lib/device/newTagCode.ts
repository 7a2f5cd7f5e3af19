import { makeTagCode, tagAlphabet, tagCodeLength } from '@/lib/core/tag'

const values = tagAlphabet.length
/** The greatest multiple of 29 that a byte can hold: what lies above would make the first characters likelier. */
const even = 256 - (256 % values)

/**
 * The code of a new tag, from the browser's own source of randomness (W3C Web Cryptography, getRandomValues).
 * @param fill fills bytes with random ones
 */
export function newTagCode(
  fill: (bytes: Uint8Array<ArrayBuffer>) => unknown = (bytes) => crypto.getRandomValues(bytes),
): string {
  const random: number[] = []
  while (random.length < tagCodeLength - 1) {
    const bytes = new Uint8Array(32)
    fill(bytes)
    random.push(...[...bytes].filter((byte) => byte < even).map((byte) => byte % values))
  }
  return makeTagCode(random.slice(0, tagCodeLength - 1))
}
