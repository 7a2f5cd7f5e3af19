/**
 * Where things stand across the drawing, in units of the drawing. One unit is a sixteenth of a rem, so the column
 * grows with the reader's text.
 */
export const across = {
  width: 176,
  figures: 31,
  tick: 44,
  left: 54,
  right: 80,
  dishLeft: 36,
  dishRight: 98,
  wellLeft: 48,
  wellRight: 86,
  lineStart: 49,
  lineEnd: 88,
  words: 103,
} as const

/** Of a line of words beside the tube. */
export const lineHeight = 15

/** Between two labels. */
export const labelGap = 5

/** Of the dish, below its water. */
export const dishDepth = 18

/** How far the glass of the dish stands above its water. */
export const rim = 7
