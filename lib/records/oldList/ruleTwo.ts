import type { Refusal } from '../envelope'
import type { ColumnField, Columns } from './columns'

/**
 * Words for a switch whose setting can be changed, or that no maker names for the furnace. Whatever begins with
 * “adjust” is one of them: “adjusted to .65”, “adjustment screw”, “adjustment range”, “adjustible”.
 */
const genericWords =
  /(?<!\p{L})(?:(?:re|pre|mis)?ad?just|adj(?!\p{L})|(?:field|site|screw)[- ]?set(?!ter|[- ]?point)|set (?:by|with) (?:an? |the )?screw|set (?:on|at) (?:the )?site|set in the field|univ(?:ersal|(?!\p{L}))|generic|gen(?:eral|\.)?[- ]*purpose|after[- ]?market|multi[- ]?fit)/giu
const jumperWords =
  /(?<!\p{L})(?:jump(?:er|ed|ing|[- ]?(?:wire|lead|cable|out))|by[- ]?pass|byp(?!\p{L})|shunt|shorted|short[- ]?circuit|bridged|(?:wired|linked|looped) out)/giu

/**
 * “Not adjustable” says the opposite, of the word right behind it alone. A “no” behind another word may be the no of a
 * number, “stock no universal 22”, and denies nothing.
 */
const denied = /(?:\b(?:not|non|never|without|isn.?t)|(?:^|[\n,;(])[- ]*no)[- ]*(?:an? )?(?:field[- ])?$/i

/** In a head they turn a yes into a no. */
const negation = /\b(?:no|not|non|never|without|isn.?t)\b/i
const undone = /\b(?:removed|replaced|taken out|cleared|absent|free|gone)\b/i

/** Columns of names of firms and people: “Universal Hearths” there is a name and no kind of switch. */
const nameFields: readonly ColumnField[] = ['maker', 'organisation', 'saidBy']
/** Columns in which digits alone are no part number: 160 Pa is no part 160. */
const numberFields: readonly ColumnField[] = [
  'make',
  'break',
  'rating',
  'date',
  'page',
  'elevationFrom',
  'elevationTo',
]
/** What stands in a column of names and is no name: the word alone, or with what is done or fitted. */
const genericAsName =
  /^(?:adjust[ai]ble|adj\.?|field[- ]?set(?:table)?|universal|univ\.?|generic|gen(?:eral|\.)?[- ]*purpose|after[- ]?market)(?: .*switch)?$|\badjusted\b/im
const jumperAsName =
  /^(?:jumper|jump[- ]?wire|by[- ]?pass|shunt)$|\b(?:jumpered|jumped|by[- ]?passed|shunted|shorted|bridged|wired out)\b/im

/** What a cell holds under “Adjustable?” where it is not, and under “Non-adjustable?” where that is so. */
const plainNo = /^(?:no?|0|false|[-–—])?$/i
const plainYes = /^(?:y|yes|1|true|x|✓|✔)$/i

/** What a cell holds under “Has no jumper” to be clear: there is no such thing. */
const nothingClear = /(?!)/

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
 *   refused. So is “found no jumper”: a “no” denies at the start of a cell, or behind a comma, semicolon or bracket.
 * - Under “Adjustable?”, “Generic” or “Jumper” a cell must be empty or a plain no; “none” and “unknown” are refused.
 * - Under “Adjustment range” the same: a switch with such a range can be adjusted, whatever else the column may mean.
 * - Under “Has no jumper”, “Not jumpered or bypassed” or “Jumper removed” every cell is refused, since a no there may
 *   mean that one is in.
 * - Under “Non-adjustable?” a cell must be a plain yes; an empty one is refused, since in a column of ticks it says no.
 * - A maker, a firm that was rung or a person may be called “Universal Hearths”; “Universal”, “Generic switch” or
 *   “Jumpered by Ede” is refused there too. A range, model or position is checked like any other cell.
 * - A number that is on file as a general-purpose switch’s is looked for in the words of every cell that is no name:
 *   “P/N UNI-22 (old)” in a note.
 *
 * @param genericIn the first part number in a text that is on file as one of a general-purpose switch
 * @returns what says it of one row, by its cells from the left
 */
export function ratingRefusals(
  head: readonly string[],
  columns: Columns,
  genericIn: (text: string) => string | undefined,
): (cells: readonly string[]) => Refusal | undefined {
  const names = new Set(nameFields.map((field) => columns[field]))
  const numbers = new Set(numberFields.map((field) => columns[field]))
  const asked = { jumper: wantedUnder(head, jumper), generic: wantedUnder(head, generic) }
  const columnAt = (at: number) => `“${head[at] ?? `Column ${at + 1}`}”`
  const under = (at: number) => `Under ${columnAt(at)} the row`

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

  function partNamed(cells: readonly string[]): string | undefined {
    for (const [at, cell] of cells.entries()) {
      if (cell === '' || names.has(at)) continue
      const part = genericIn(cell)
      if (part !== undefined && (!numbers.has(at) || /\p{L}/u.test(part)))
        return `Part ${part} under ${columnAt(at)} is on file as an adjustable or general-purpose switch`
    }
    return undefined
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
    const ofGeneric =
      partNamed(cells) ?? told(row, generic, asked.generic, 'an adjustable or general-purpose switch')
    if (ofGeneric === undefined) return undefined
    return {
      rule: 'no general-purpose switch',
      sentence: `${ofGeneric}. Its number says nothing about this furnace’s rating. Is it still in? Record it as found fitted, when and by whom, and ask the maker for the factory switch’s rating. ${otherwise}`,
    }
  }
}

const otherwise = 'Is something else meant? Put it right in the list and choose the file again.'

/** What cells must be under heads that speak of it: a no; a yes where the head itself denies it; or nothing clear. */
function wantedUnder(head: readonly string[], { said }: Words): Map<number, RegExp> {
  return new Map(
    head.flatMap((name, at): [number, RegExp][] => {
      const text = plain(name)
      const places = [...text.matchAll(said)].map(({ index }) => text.slice(0, index))
      if (places.length === 0) return []
      if (undone.test(text)) return [[at, nothingClear]]
      if (places.every((before) => denied.test(before))) return [[at, plainYes]]
      return [[at, negation.test(places.at(-1)!) ? nothingClear : plainNo]]
    }),
  )
}

/** One place where a word stands undenied is enough: “not adjustable when found; adjustable one fitted”. */
export const isSaid = (text: string, pattern: RegExp): boolean =>
  text !== '' && [...text.matchAll(pattern)].some(({ index }) => !denied.test(text.slice(0, index)))

/**
 * Letters as they are meant: “is_adjustable”, “isAdjustable”, and dashes, blanks and marks that only look different.
 * Empty where there are none, as in most cells of a long list. A mark that is not seen, such as a soft hyphen, may
 * stand within a word or between two: with one in it the text is given both ways, a line each.
 */
export function plain(text: string): string {
  if (!/\p{L}/u.test(text)) return ''
  const whole = text.normalize('NFKC')
  return unseen.test(whole)
    ? ['', ' '].map((instead) => spelt(whole.replaceAll(/\p{Cf}/gu, instead))).join('\n')
    : spelt(whole)
}

const unseen = /\p{Cf}/u

const spelt = (text: string): string =>
  text
    .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replaceAll(/\p{Pd}/gu, '-')
    .replaceAll(/[_\s]+/g, ' ')
    .trim()
