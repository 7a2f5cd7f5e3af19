/** Which sign parts the decimals in a file; 'not known' keeps what can be read in two ways from being guessed. */
export type DecimalSign = 'point' | 'comma' | 'not known'

const numbers = /\d[\d.,]*\d|\d|[.,]\d+/g
const grouped = { comma: /^[1-9]\d{0,2}(?:,\d{3})+$/, point: /^[1-9]\d{0,2}(?:\.\d{3})+$/ } as const

/**
 * Which sign parts the decimals, judged by the numbers that can be read in one way only. Both or neither says nothing.
 *
 * @example guessDecimals(['0,65', '1,250']) // 'comma'
 */
export function guessDecimals(cells: readonly string[]): DecimalSign {
  let [points, commas] = [0, 0]
  for (const cell of cells) {
    for (const [number] of cell.matchAll(numbers)) {
      const comma = /^\d*,\d+$/.test(number) && !grouped.comma.test(number)
      const point = /^\d*\.\d+$/.test(number) && !grouped.point.test(number)
      if (comma || /^\d{1,3}(?:\.\d{3})+,\d+$/.test(number)) commas += 1
      if (point || /^\d{1,3}(?:,\d{3})+\.\d+$/.test(number)) points += 1
    }
  }
  if (commas > 0 && points === 0) return 'comma'
  return points > 0 && commas === 0 ? 'point' : 'not known'
}

/**
 * A text with its numbers written with a decimal point and without signs between thousands, as its file writes them.
 * Not known leaves it as it is: then a number that can be read in two ways is asked about and not read.
 *
 * @example withPoints('1.234,5 Pa ±0,5', 'comma') // '1234.5 Pa ±0.5'
 */
export function withPoints(text: string, sign: DecimalSign): string {
  if (sign === 'not known') return text
  return text.replaceAll(numbers, (number) => {
    if (sign === 'point') return grouped.comma.test(number) ? number.replaceAll(',', '') : number
    if (number.includes(',')) return number.replaceAll('.', '').replace(',', '.')
    return grouped.point.test(number) ? number.replaceAll('.', '') : number
  })
}
