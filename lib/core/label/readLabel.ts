import { partCandidates } from './partCandidates'
import type { LabelLine, LabelReading } from './types'
import { valueCandidates } from './valueCandidates'

/**
 * What a rating label seems to say, from the words that were recognised in a picture of it: candidates, for a person
 * to compare with the label. What is odd is shown with the reason and never put right silently.
 * @param partNumbersOnFile as they are written on file
 * @example readLabel([[{ text: 'CLOSE', confidence: 96 }, { text: '.62', confidence: 93 },
 *   { text: 'WC', confidence: 95 }]], []).values[0]?.text // 'CLOSE .62 WC'
 */
export function readLabel(lines: readonly LabelLine[], partNumbersOnFile: readonly string[]): LabelReading {
  const words = lines.map(withoutEdges).filter((line) => line.length > 0)
  return { values: valueCandidates(words), parts: partCandidates(words, partNumbersOnFile) }
}

/** A lone letter that a label's edge or a scratch is read as. No unit and no number is one letter of these. */
const edge = /^[jJlLiI|]$/

/** A line without what is no word at its ends. */
function withoutEdges(line: LabelLine): LabelLine {
  const first = line.findIndex(({ text }) => !edge.test(text))
  const last = line.findLastIndex(({ text }) => !edge.test(text))
  return first < 0 ? [] : line.slice(first, last + 1)
}
