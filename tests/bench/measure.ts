/** The middle of some measurements, the mean of the two middle ones if there are two. Throws RangeError for none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  const upper = sorted[Math.floor(sorted.length / 2)]
  const lower = sorted[Math.floor((sorted.length - 1) / 2)]
  if (upper === undefined || lower === undefined) throw new RangeError('median requires at least one value')
  return (lower + upper) / 2
}

/** The value that the given share of the measurements, 0 to 1, do not exceed. Throws RangeError for none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other)
  const value = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)]
  if (value === undefined) throw new RangeError('quantile requires at least one value')
  return value
}

/** How long a piece of work takes, in milliseconds. */
export function timed<T>(work: () => T): { result: T; milliseconds: number } {
  const started = performance.now()
  const result = work()
  return { result, milliseconds: performance.now() - started }
}
