export type Scored = { number: number; score: number }

/**
 * Keeps the `limit` things that come first of many that are thrown away: the lowest scores and, of two with the same
 * score, the lower number. `offer` takes them in any order, `inOrder` gives what was kept, best first.
 */
export function firstFew(limit: number): {
  offer: (number: number, score: number) => void
  inOrder: () => Scored[]
} {
  const kept: Scored[] = []

  const offer = (number: number, score: number) => {
    if (kept.length === limit && !comesAfter(kept[limit - 1]!, number, score)) return
    let low = 0
    let high = kept.length
    while (low < high) {
      const middle = (low + high) >>> 1
      if (comesAfter(kept[middle]!, number, score)) high = middle
      else low = middle + 1
    }
    kept.splice(low, 0, { number, score })
    if (kept.length > limit) kept.pop()
  }
  return { offer, inOrder: () => kept }
}

const comesAfter = (one: Scored, number: number, score: number): boolean =>
  one.score > score || (one.score === score && one.number > number)
