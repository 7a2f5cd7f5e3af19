/** What this person opened lately on this device, newest first. Kept in the device's own store. */
export type LookUp = { key: string; words: string; href: string }

export const recentKey = 'recent look-ups'
const kept = 8

/** Puts a look-up first, once. */
export const remember = (recent: readonly LookUp[], look: LookUp): LookUp[] =>
  [look, ...recent.filter((each) => each.key !== look.key)].slice(0, kept)
