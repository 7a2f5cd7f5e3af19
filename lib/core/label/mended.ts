import { lookAlikeDigits } from './lookAlikeDigits'
import type { LabelLine } from './types'

/**
 * A word of a line with what recognition is known to get wrong put right: letters for digits, and a + for the ± of a
 * tolerance, whose lower stroke it loses. A tolerance upwards alone is printed with the one downwards beside it, so a
 * lone + behind a number stands for ±.
 */
export function mended(line: LabelLine, at: number): string {
  const word = lookAlikeDigits(line[at]!.text)
  const behindNumber = at > 0 && /\d["”]?$/.test(lookAlikeDigits(line[at - 1]!.text))
  const alone = !line.some(({ text }, other) => other > at && /^-\.?\d|\/-/.test(text))
  return behindNumber && alone && /^\+\d*\.\d+["”]?$/.test(word) ? `±${word.slice(1)}` : word
}

/** The words that were put right, as they were read and as they were taken. */
export const mendings = (lines: readonly LabelLine[]): [read: string, taken: string][] =>
  lines.flatMap((line) =>
    line
      .map(({ text }, at): [string, string] => [text, mended(line, at)])
      .filter(([read, taken]) => read !== taken),
  )
