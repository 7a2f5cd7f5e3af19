import type { Refusal } from '../envelope'
import type { ColumnField } from './columns'
import type { OldRow } from './readRow'

/** Words for a switch whose setting can be changed, or that no maker names for the furnace. */
const genericWords =
  /\b(?:adjustable|adjust\.|adj|field[- ]?set|universal|generic|general[- ]?purpose|aftermarket|multi[- ]?fit)(?=$|[^\p{L}])/giu
const jumperWords = /\b(?:jumper(?:ed)?|by-?pass(?:ed)?|jumped out|wired out)\b/gi

/** “Not adjustable” says the opposite, of the word right behind it alone. */
const denied = /\b(?:not|non|no|never|isn.t)[- ]*(?:an? )?(?:field[- ])?$/i

const looked: readonly ColumnField[] = [
  'switchType',
  'source',
  'position',
  'partNumber',
  'rating',
  'make',
  'break',
  'document',
  'note',
]

/**
 * Why a row says nothing about a furnace’s rating: it is of an adjustable or general-purpose switch, or of a jumper.
 * A list of old ratings is the likeliest way for such a number to get on file, so words are enough to refuse it.
 *
 * @param isGeneric whether a part number is on file as one of a general-purpose switch
 */
export function whyNoRating(row: OldRow, isGeneric: (partNumber: string) => boolean): Refusal | undefined {
  const text = (field: ColumnField): string => row.cells[field] ?? ''
  const says = (pattern: RegExp) => looked.find((field) => isSaid(text(field), pattern))
  if (says(jumperWords) !== undefined) {
    return {
      rule: 'no bypass',
      sentence:
        'The row speaks of a jumper or bypass, which is no switch and has no rating. Is it still in? Record it as found fitted, when and by whom.',
    }
  }
  const named = text('partNumber') !== '' && isGeneric(text('partNumber'))
  if (!named && says(genericWords) === undefined) return undefined
  return {
    rule: 'no general-purpose switch',
    sentence: `${
      named
        ? `Part ${text('partNumber')} is on file as an adjustable or general-purpose switch.`
        : 'The row speaks of an adjustable or general-purpose switch.'
    } Its number says nothing about this furnace’s rating. Is it still in? Record it as found fitted, when and by whom, and ask the maker for the factory switch’s rating.`,
  }
}

/** One place where a word stands undenied is enough: “not adjustable when found; adjustable one fitted”. */
const isSaid = (text: string, pattern: RegExp): boolean =>
  [...text.matchAll(pattern)].some(({ index }) => !denied.test(text.slice(0, index)))
