/** Letters that recognition puts for digits. */
const digits: Readonly<Record<string, string>> = {
  O: '0',
  o: '0',
  Q: '0',
  D: '0',
  I: '1',
  l: '1',
  '|': '1',
  Z: '2',
  S: '5',
  B: '8',
}

const decimalWord = /^([-+±]?)([0-9OoQDIl|ZSB]*)([.,])([0-9OoQDIl|ZSB]+)(["”]?)$/

/**
 * A word that is a decimal number but for letters that look like digits, with those made digits; any other word as it
 * is. A word without a decimal point, or without one true digit, may be a word after all and is left alone.
 * @example lookAlikeDigits('O.6S') // '0.65'
 */
export function lookAlikeDigits(word: string): string {
  const found = decimalWord.exec(word)
  if (found === null || !/\d/.test(word)) return word
  const plain = (text = '') => text.replace(/\D/g, (letter) => digits[letter] ?? letter)
  return `${found[1]}${plain(found[2])}${found[3]}${plain(found[4])}${found[5]}`
}
