import { formatPressure, pressureNumeral } from '@/lib/core/pressure'
import { toleranceWords } from '../words/pressureWords'
import { sayDate } from '../words/sayDate'
import type { Column, ColumnMark } from './column'

const senseWords = {
  suction: 'suction',
  pressure: 'positive pressure',
  'not stated': 'sense not stated',
} as const
const verbs = { closes: 'Closes', opens: 'Opens', 'not stated': 'Action not stated,' } as const

/**
 * The picture in words, for whoever can't see it; everything that the drawing tells, in the same order.
 * Example: `Water column, suction. Closes at 0.58 in. w.c. ± 0.05, Verified, 12 Jan 2026.`
 */
export function describeColumn({ unit, sense, marks, reading, earlier = [] }: Column): string {
  const sentences = [`Water column, ${senseWords[sense]}.`]
  for (const mark of marks) sentences.push(markSentence(mark, unit))
  if (reading) {
    const uncertainty = pressureNumeral(reading.uncertaintyPascals, unit)
    sentences.push(`Reading ${formatPressure(reading.pascals, unit)}, give or take ${uncertainty}.`)
  }
  if (earlier.length > 0) {
    const values = earlier.map(({ pascals }) => pressureNumeral(pascals, unit)).join(', ')
    sentences.push(`Earlier: ${values}.`)
  }
  return sentences.join(' ')
}

function markSentence(mark: ColumnMark, unit: Column['unit']): string {
  const tolerance = toleranceWords(mark, unit)
  const value = `${verbs[mark.action]} at ${formatPressure(mark.pascals, unit)}`
  const standing = mark.onceSaved
    ? `not saved yet: would stand as ${mark.standing.level}`
    : `${mark.standing.level}, ${sayDate(mark.standing.asOf)}`
  return `${[value, tolerance].filter(Boolean).join(' ')}, ${standing}.`
}
