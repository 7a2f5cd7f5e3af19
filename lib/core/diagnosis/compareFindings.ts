import type { CaseTable } from './caseTable'
import type { Observed } from './readObservations'

/** Byte b with its eight bits moved apart to the lowest bit of eight nibbles. */
const spread = Int32Array.from({ length: 256 }, (_, byte) => {
  let nibbles = 0
  for (let bit = 0; bit < 8; bit++) nibbles |= ((byte >>> bit) & 1) << (4 * bit)
  return nibbles
})

const mostObserved = 255
const slices = 8

/**
 * Compares the observed findings with every case: how many were checked in both and agree, how many disagree. Adds to
 * `into`, for each case, disagreements × (observed.length + 1) + agreements. Findings not checked count in neither.
 * Throws RangeError for more than 255 observed findings.
 *
 * Thirty-two cases are counted at once: slice s of a counter holds bit s of thirty-two counts, and adding a set to
 * it is a ripple of carries (bit-slice arithmetic); a table then turns the slices into numbers, byte by byte.
 *
 * @param into one number for each case, its length rounded up to whole words
 */
export function compareFindings(table: CaseTable, observed: readonly Observed[], into: Int32Array): void {
  if (observed.length > mostObserved) {
    throw new RangeError(`At most ${mostObserved} findings can be compared at once`)
  }
  if (observed.length === 0) return
  const { words, checked, valued } = table
  const stride = observed.length + 1
  const checkedAt = Int32Array.from(observed, ({ finding }) => finding * words)
  const valuedAt = Int32Array.from(observed, (one) => (table.firstValue[one.finding]! + one.value) * words)
  const agree = new Int32Array(slices)
  const differ = new Int32Array(slices)
  const wide = observed.length > 15

  for (let word = 0; word < words; word++) {
    agree.fill(0)
    differ.fill(0)
    for (let f = 0; f < checkedAt.length; f++) {
      const same = valued[valuedAt[f]! + word]!
      addSet(agree, same)
      addSet(differ, checked[checkedAt[f]! + word]! & ~same)
    }
    for (let byte = 0; byte < 4; byte++) {
      const first = word * 32 + byte * 8
      const agreeLow = nibblesOf(agree, 0, byte)
      const differLow = nibblesOf(differ, 0, byte)
      for (let lane = 0; lane < 8; lane++) {
        into[first + lane]! += ((differLow >>> (4 * lane)) & 15) * stride + ((agreeLow >>> (4 * lane)) & 15)
      }
      if (!wide) continue
      const agreeHigh = nibblesOf(agree, 4, byte)
      const differHigh = nibblesOf(differ, 4, byte)
      for (let lane = 0; lane < 8; lane++) {
        into[first + lane]! +=
          16 * (((differHigh >>> (4 * lane)) & 15) * stride + ((agreeHigh >>> (4 * lane)) & 15))
      }
    }
  }
}

function addSet(counter: Int32Array, set: number): void {
  let carry = set
  for (let slice = 0; carry !== 0; slice++) {
    const before = counter[slice]!
    counter[slice] = before ^ carry
    carry &= before
  }
}

function nibblesOf(counter: Int32Array, from: number, byte: number): number {
  const shift = 8 * byte
  return (
    spread[(counter[from]! >>> shift) & 255]! |
    (spread[(counter[from + 1]! >>> shift) & 255]! << 1) |
    (spread[(counter[from + 2]! >>> shift) & 255]! << 2) |
    (spread[(counter[from + 3]! >>> shift) & 255]! << 3)
  )
}
