/** How long the team file may be read without contact, in days: product decision. */
export const longestWithoutContactDays = 45

const dayMs = 24 * 60 * 60 * 1000

export type Contacts = {
  /** When the log was last asked and answered to its end, ISO 8601; undefined before the first time. */
  freshAt: string | undefined
  /** The latest time that this device has ever shown since then, ISO 8601. */
  latestAt: string | undefined
  now: Date
}

/**
 * Whether the file has been without contact for so long that it may not be read. The latest time ever seen counts, and
 * not only the time now: a clock that is set back makes no file young.
 */
export function isLocked({ freshAt, latestAt, now }: Contacts): boolean {
  if (freshAt === undefined) return false
  const latest = Math.max(now.getTime(), latestAt === undefined ? 0 : Date.parse(latestAt))
  return latest - Date.parse(freshAt) > longestWithoutContactDays * dayMs
}
