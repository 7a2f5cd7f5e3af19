/**
 * A small seeded generator of numbers in [0, 1), for everything in the core that samples: the same seed gives
 * the same numbers on the phone and on the server. Mulberry32, public domain (Tommy Ettinger, 2017).
 * Not for secrets.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}
