/**
 * Where things stand across the drawing, in units of the drawing. One unit is a sixteenth of a rem, so the column
 * grows with the reader's text.
 */
export const across = {
  width: 172,
  figures: 38,
  tick: 46,
  left: 56,
  right: 78,
  dishLeft: 40,
  dishRight: 94,
  wellLeft: 50,
  wellRight: 84,
  lineStart: 51,
  lineEnd: 86,
  words: 98,
  labelGap: 5,
  dishDepth: 20,
} as const

/** Of a line of words beside the tube. */
export const lineHeight = 15
