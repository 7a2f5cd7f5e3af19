const two = (figure: number): string => String(figure).padStart(2, '0')

/** The day of a moment by the clock of this device, as year-month-day: `2026-01-09`. */
export const dayOf = (moment: Date): string =>
  `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`
