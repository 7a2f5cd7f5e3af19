/**
 * A probability in a word. The bounds are ours and only for reading; the number and its interval stand beside it.
 * @example chanceWord(0.62) // 'likely'
 */
export function chanceWord(probability: number): string {
  if (probability >= 0.8) return 'very likely'
  if (probability >= 0.5) return 'likely'
  if (probability >= 0.2) return 'possible'
  if (probability >= 0.05) return 'unlikely'
  return 'very unlikely'
}

/**
 * An interval of probabilities; one whose ends read the same is said once.
 * @example spanWords([0.001, 0.004]) // 'under 1 %'
 */
export function spanWords([from, to]: readonly [number, number]): string {
  const ends = [perCent(from), perCent(to)]
  return ends[0] === ends[1] ? perCent(from) : ends.join(' to ')
}

/** A probability in whole per cent; what rounds to none or to all is said to be nearly so. */
export function perCent(probability: number): string {
  const rounded = Math.round(100 * probability)
  if (rounded === 0 && probability > 0) return 'under 1 %'
  if (rounded === 100 && probability < 1) return 'over 99 %'
  return `${rounded} %`
}
