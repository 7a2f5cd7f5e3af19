/** Warnings about the size of a number: each of them names a slip that people make. */
export const isOddSize = (code: string): boolean =>
  ['ten-times', 'a-tenth', 'manifold-pressure', 'outside-usual-range', 'confirm-value'].includes(code) ||
  code.includes('-as-')
