/** A moment as the database keeps it, e.g. `2026-11-25T09:30:00.000+00:00`: all alike, so that text order is time order. */
export const asStored = (moment: Date): string => moment.toISOString().replace('Z', '+00:00')
