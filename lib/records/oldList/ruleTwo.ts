import type { Refusal } from '../envelope'
import type { ColumnField, Columns } from './columns'

/** Words for a switch whose setting can be changed, or that no maker names for the furnace. */
const genericWords =
  /\b(?:adjustables?|adjust\.|adj|field[- ]?set|universals?|generics?|general[- ]?purpose|aftermarket|multi[- ]?fit)(?=$|[^\p{L}])/giu
const jumperWords = /\b(?:jumper(?:s|ed|ing)?|by[- ]?pass(?:ed|es|ing)?|jumped out|wired out)\b/gi

/** “Not adjustable” says the opposite, of the word right behind it alone. */
const denied = /\b(?:not|non|no|never|isn.t)[- ]*(?:an? )?(?:field[- ])?$/i
/** The “no” of a number denies nothing: “part no universal 22”. */
const numberNo = /\b(?:part|model|serial|switch|item) ?no[- ]*$/i

/** Columns of names of firms and people: “Universal Hearths” there is a name and no kind of switch. */
const nameFields: readonly ColumnField[] = ['maker', 'organisation', 'saidBy']
/** What stands in a column of names and is no name: the word alone, or with what is done or fitted. */
const genericAsName =
  /^(?:adjustable|adj|field[- ]?set|universal|generic|general[- ]?purpose|aftermarket)(?: .*switch)?$/i
const jumperAsName = /^(?:jumper|by[- ]?pass)$|\b(?:jumpered|by[- ]?passed|jumped out|wired out)\b/i

/** What a cell holds under “Adjustable?” where it is not, and under “Non-adjustable?” where that is so. */
const plainNo = /^(?:no?|0|false|[-–—])?$/i
const plainYes = /^(?:y|yes|1|true|x|✓|✔)$/i

/** A row as it is written, and its cells as they are meant. */
type Row = { cells: readonly string[]; texts: readonly string[] }

/** What the words of one rule look for. */
type Words = { said: RegExp; asName: RegExp }
const jumper: Words = { said: jumperWords, asName: jumperAsName }
const generic: Words = { said: genericWords, asName: genericAsName }

/**
 * Tells of the rows of a table why they say nothing about a furnace’s rating: a row is of an adjustable or
 * general-purpose switch, or of a jumper. A list of old ratings is the likeliest way for such a number to get on file,
 * so words are enough to refuse it, in whatever cell, mapped to a field or not, or above it. Where it is unclear the
 * row is refused, and the refusal says where the words stand:
 * - “not adjustable” and “non-adjustable” deny the word behind them; “OEM, do not use universal” speaks of one, and is
 *   refused.
 * - Under “Adjustable?”, “Generic” or “Jumper” a cell must be empty or a plain no; “none” and “unknown” are refused.
 * - Under “Non-adjustable?” a cell must be a plain yes; an empty one is refused, since in a column of ticks it says no.
 * - A maker, a firm that was rung or a person may be called “Universal Hearths”; “Universal”, “Generic switch” or
 *   “Jumpered by Ede” is refused there too. A range, model or position is checked like any other cell.
 *
 * @param isGeneric whether a part number is on file as one of a general-purpose switch
 * @returns what says it of one row, by its cells from the left
 */
export function ratingRefusals(
  head: readonly string[],
  columns: Columns,
  isGeneric: (partNumber: string) => boolean,
): (cells: readonly string[]) => Refusal | undefined {
  const mapped = new Map(Object.entries(columns).map(([field, at]) => [at, field as ColumnField]))
  const names = new Set(nameFields.map((field) => columns[field]))
  /** A column that is mapped to nothing may hold part numbers too. */
  const mayBePart = (at: number) => (mapped.get(at) ?? 'partNumber') === 'partNumber'
  const asked = { jumper: wantedUnder(head, jumper), generic: wantedUnder(head, generic) }
  const under = (at: number) => `Under “${head[at] ?? `Column ${at + 1}`}” the row`

  function told(row: Row, words: Words, wanted: Map<number, RegExp>, what: string) {
    const { cells, texts } = row
    for (const [at, pattern] of wanted) {
      const cell = cells[at]?.trim() ?? ''
      if (!pattern.test(cell))
        return `${under(at)} says ${cell === '' ? 'nothing' : `“${cell}”`}: it may be of ${what}`
    }
    const at = texts.findIndex((text, place) =>
      names.has(place) ? words.asName.test(text) : isSaid(text, words.said),
    )
    return at < 0 ? undefined : `${under(at)} speaks of ${what}`
  }

  return (cells) => {
    const row = { cells, texts: cells.map(plain) }
    const ofJumper = told(row, jumper, asked.jumper, 'a jumper or bypass')
    if (ofJumper !== undefined) {
      return {
        rule: 'no bypass',
        sentence: `${ofJumper}, which is no switch and has no rating. Is it still in? Record it as found fitted, when and by whom. ${otherwise}`,
      }
    }
    const part = cells.find((cell, at) => cell !== '' && mayBePart(at) && isGeneric(cell))
    const ofGeneric =
      part === undefined
        ? told(row, generic, asked.generic, 'an adjustable or general-purpose switch')
        : `Part ${part} is on file as an adjustable or general-purpose switch`
    if (ofGeneric === undefined) return undefined
    return {
      rule: 'no general-purpose switch',
      sentence: `${ofGeneric}. Its number says nothing about this furnace’s rating. Is it still in? Record it as found fitted, when and by whom, and ask the maker for the factory switch’s rating.${part === undefined ? ` ${otherwise}` : ''}`,
    }
  }
}

const otherwise = 'Is something else meant? Put it right in the list and choose the file again.'

/** What cells must be under the heads that speak of it: a no, or a yes where the head itself denies it. */
function wantedUnder(head: readonly string[], { said }: Words): Map<number, RegExp> {
  return new Map(
    head.flatMap((name, at): [number, RegExp][] => {
      const text = plain(name)
      if (text.search(said) < 0) return []
      return [[at, isSaid(text, said) ? plainNo : plainYes]]
    }),
  )
}

/** One place where a word stands undenied is enough: “not adjustable when found; adjustable one fitted”. */
const isSaid = (text: string, pattern: RegExp): boolean =>
  [...text.matchAll(pattern)].some(({ index }) => {
    const before = text.slice(0, index)
    return !denied.test(before) || numberNo.test(before)
  })

/**
 * Letters as they are meant: “is_adjustable”, “isAdjustable”, and dashes, blanks and marks that only look different.
 * Empty where there are none, as in most cells of a long list.
 */
const plain = (text: string): string =>
  /\p{L}/u.test(text)
    ? text
        .normalize('NFKC')
        .replaceAll(/\p{Cf}/gu, '')
        .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
        .replaceAll(/\p{Pd}/gu, '-')
        .replaceAll(/[_\s]+/g, ' ')
        .trim()
    : ''
