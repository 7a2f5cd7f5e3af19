/**
 * Uncertainty of a set of probabilities in bits (C. E. Shannon, "A mathematical theory of communication", 1948):
 * −Σ p·log2 p, and nothing for p = 0.
 *
 * @example entropyBits([0.5, 0.5]) === 1
 */
export function entropyBits(probabilities: Iterable<number>): number {
  let bits = 0
  for (const probability of probabilities) {
    if (!(probability >= 0 && probability <= 1 + 1e-9))
      throw new RangeError('entropyBits requires probabilities')
    if (probability > 0) bits -= probability * Math.log2(probability)
  }
  return Math.max(0, bits)
}

/**
 * How many bits of that uncertainty an outcome takes away on average: the mutual information of hypothesis and
 * outcome, known as information gain. Never below 0.
 *
 * @param probabilities of the hypotheses, together 1
 * @param outcomes for each possible outcome, its chance under each hypothesis
 * @example expectedBits([0.5, 0.5], [[1, 0], [0, 1]]) === 1
 */
export function expectedBits(
  probabilities: readonly number[],
  outcomes: readonly (readonly number[])[],
): number {
  let left = 0
  for (const chances of outcomes) {
    if (chances.length !== probabilities.length) {
      throw new RangeError('expectedBits requires a chance under every hypothesis')
    }
    const together = probabilities.map((probability, hypothesis) => probability * chances[hypothesis]!)
    const chance = together.reduce((sum, one) => sum + one, 0)
    if (chance > 0) left += chance * entropyBits(together.map((one) => one / chance))
  }
  return Math.max(0, entropyBits(probabilities) - left)
}
