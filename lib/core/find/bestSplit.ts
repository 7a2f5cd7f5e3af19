import type { Piece } from './readTyped'

/** How near each entry is to one piece: 1 is the text itself, 0 nothing in common. */
export type Nearness = { piece: Piece; byEntry: Float32Array }

/** Several texts that explain the words together are never as good as one text that says it all. */
const splitFrom = 0.02
/** An entry that explains less of the words than this is left out. */
const worstSplit = 0.6

/**
 * The best way to read typed words for one entry: as a whole, or split into pieces, each explained by the text
 * nearest to it and weighed by its length; what nothing explains counts as 1. The first nearness must be the whole's,
 * the others in the order in which their pieces end. Made for being asked about many entries: nothing is allocated
 * until `pieces` are wanted.
 */
export function bestSplit<N extends Nearness>(nearness: readonly N[], words: number) {
  const [whole, ...parts] = nearness
  const letters = parts.reduce(
    (sum, { piece }) => sum + (piece.to - piece.from === 1 ? piece.folded.length : 0),
    0,
  )
  const explained = new Float64Array(words + 1)
  const lastPart = new Int32Array(words + 1)

  const split = (entry: number): number => {
    if (parts.length === 0) return 1
    explained.fill(-1, 1)
    for (let part = 0; part < parts.length; part++) {
      const { piece, byEntry } = parts[part]!
      const reached = explained[piece.from]! + piece.folded.length * byEntry[entry]!
      if (reached <= explained[piece.to]!) continue
      explained[piece.to] = reached
      lastPart[piece.to] = part
    }
    const score = splitFrom + (1 - splitFrom) * (1 - explained[words]! / letters)
    return score <= worstSplit ? score : 1
  }
  const asWhole = (entry: number): number => 1 - (whole?.byEntry[entry] ?? 0)
  const toMillionth = (score: number) => Math.round(score * 1e6) / 1e6

  return {
    score: (entry: number): number => toMillionth(Math.min(asWhole(entry), split(entry))),
    pieces: (entry: number): readonly N[] => {
      if (whole && asWhole(entry) <= split(entry)) return [whole]
      const pieces: N[] = []
      for (let to = words; to > 0; ) {
        const part = parts[lastPart[to]!]!
        pieces.push(part)
        to = part.piece.from
      }
      return pieces
    },
  }
}
