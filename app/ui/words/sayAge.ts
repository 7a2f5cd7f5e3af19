/**
 * How long ago something was, in the words of a busy person. Whole units, rounded down: nothing looks fresher
 * than a unit below would tell.
 * @param from ISO 8601 moment  @param now ISO 8601 moment
 * @returns `just now` under a minute (and for a clock that runs ahead), `14 min ago`, `3 h ago`, `2 days ago`
 * @throws RangeError when one of the two is no moment
 */
export function sayAge(from: string, now: string): string {
  const minutes = Math.floor((Date.parse(now) - Date.parse(from)) / 60_000)
  if (Number.isNaN(minutes)) throw new RangeError(`sayAge requires two ISO 8601 moments, got ${from}, ${now}`)
  if (minutes < 1) return 'just now'
  if (minutes < 60) return `${minutes} min ago`
  const hours = Math.floor(minutes / 60)
  if (hours < 24) return `${hours} h ago`
  const days = Math.floor(hours / 24)
  return days === 1 ? '1 day ago' : `${days} days ago`
}
