/**
 * v′ · A⁻ · v for a symmetric matrix A without negative eigenvalues, and the rank of A. A⁻ is any generalised
 * inverse: for a v in the range of A they all give the same. Cholesky's decomposition, always taking the largest
 * pivot that is left; what falls below a billionth of the largest counts as nothing.
 */
export function quadraticForm(
  vector: readonly number[],
  matrix: readonly (readonly number[])[],
): { value: number; rank: number } {
  const left = matrix.map((row) => [...row])
  const rest = [...vector]
  const nothing = 1e-9 * Math.max(...left.map((row, place) => row[place]!))
  const waiting = new Set(rest.keys())
  let value = 0
  let rank = 0
  for (;;) {
    const pivot = [...waiting].reduce<number | undefined>(
      (best, place) => (best === undefined || left[place]![place]! > left[best]![best]! ? place : best),
      undefined,
    )
    if (pivot === undefined || !(left[pivot]![pivot]! > nothing)) return { value, rank }
    waiting.delete(pivot)
    const size = left[pivot]![pivot]!
    value += rest[pivot]! ** 2 / size
    rank++
    for (const row of waiting) {
      const factor = left[row]![pivot]! / size
      rest[row]! -= factor * rest[pivot]!
      for (const column of waiting) left[row]![column]! -= factor * left[pivot]![column]!
    }
  }
}
