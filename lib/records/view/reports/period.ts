/** The moments that a report is about, milliseconds since 1970, UTC: from the first, up to and without the second. */
export type Period = { from: number; before: number }

export const isIn = ({ from, before }: Period, moment: number): boolean => moment >= from && moment < before

/** Everything up to a moment. */
export const everythingUntil = (now: string): Period => ({ from: 0, before: Date.parse(now) + 1 })
