/** What is mistaken for what on a worn label or in hurried handwriting: 0/O, 1/I/L, 5/S, 8/B, 2/Z, 6/G. */
const digitThatLooksLike: Readonly<Record<string, string>> = {
  O: '0',
  I: '1',
  L: '1',
  S: '5',
  B: '8',
  Z: '2',
  G: '6',
}

const anyLookAlike = /[OILSBZG]/g

/**
 * A folded text with every look-alike letter turned into its digit, so that both spellings are one. The length
 * does not change.
 *
 *   foldLookAlikes('SO1L')  // '5011'
 */
export const foldLookAlikes = (folded: string): string =>
  folded.replace(anyLookAlike, (letter) => digitThatLooksLike[letter] ?? letter)
