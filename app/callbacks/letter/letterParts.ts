import type { TeamFile } from '@/lib/records/fold/teamFile'
import { endingWays } from '@/lib/records/kinds/ending'
import type { CaseShare } from '@/lib/records/view/callbacks/caseShare'
import type { LetterFigures, MonthInLetter } from '@/lib/records/view/letter/letterFigures'
import { wayWords } from '../../cases/end/endingWords'
import { momentWords } from '../../cases/history/momentWords'
import { countOf } from '../countOf'
import { untilWords } from '../lastDay'
import { undoneLists } from '../leftUndone/undoneLists'
import { monthWords } from '../monthWords'
import { shareWords } from '../shareWords'
import { changeWords, shareChange } from './changeWords'

/** One figure of the letter: of the month, of the one before, and what changed. */
export type LetterRow = { key: string; words: string; month: string; before: string; change: string }

/** One thing to do: what waits, how much of it, what to do, the first of it, and how much more there is. */
export type LetterTodo = { key: string; words: string; todo: string; first: readonly string[] }

/** The letter in words, the same on the screen and on paper. */
export type LetterParts = {
  title: string
  standing: string
  means: string
  columns: readonly [string, string, string, string]
  /** The months of the second and the third column, '2026-01'. */
  months: readonly [string, string]
  rows: readonly LetterRow[]
  todoTitle: string
  todos: readonly LetterTodo[]
  /** In place of the list when nothing waits. */
  nothingTodo: string
  foot: readonly string[]
}

/** The newest entry of the log: its number, and the hash that stands for it and all before it. */
export type LogHead = { seq: number; hash: string }

/** As many of a list as a page has room for. */
const named = 2

/**
 * The monthly letter in words.
 * @param head left out while it is not known: without a signal it cannot be asked for
 * @param minutesAhead the zone in which the moment of the letter is said; that of this device where it is left out
 */
export function letterParts(
  figures: LetterFigures,
  file: TeamFile,
  { now, head, minutesAhead }: { now: string; head: LogHead | undefined; minutesAhead?: number },
): LetterParts {
  const { month, before, undone, question } = figures
  const waiting = undoneLists(undone, file).filter(({ items }) => items.length > 0)
  return {
    title: `Letter for ${monthWords(month.month)}`,
    standing: [standingWords(month), standingWords(before)].join(' '),
    means: `A callback is a case opened within ${question.days} days of the end of a job on the same furnace, both about the proving circuit. Months are those of UTC. Under ten cases no per cent is said.`,
    columns: ['Figure', monthWords(month.month), monthWords(before.month), 'Change'],
    months: [month.month, before.month],
    rows: rowsOf(month, before),
    todoTitle: 'What to do, as it stands now',
    todos: waiting.map(({ key, title, todo, items }) => ({
      key,
      words: `${title}: ${items.length}`,
      todo,
      first: [
        ...items.slice(0, named).map(({ words }) => words),
        ...(items.length > named ? [`and ${items.length - named} more, in Left undone`] : []),
      ],
    })),
    nothingTodo: 'Nothing is left undone: no list has anything in it.',
    foot: [
      `Made from the records as they stood ${momentWords(now, minutesAhead)}.`,
      head === undefined
        ? 'The log’s head hash is not known here: it is asked of the server, which cannot be reached.'
        : `Log: ${countOf(head.seq, 'entry', 'entries')}. Head hash ${head.hash}. Keep this page: the hash stands for every entry up to it, and shows whether one was changed later.`,
    ],
  }
}

const standingWords = ({ month, standing, settlesAt }: MonthInLetter): string =>
  standing === 'settled'
    ? `${monthWords(month)} is settled: its callbacks no longer change.`
    : `${monthWords(month)} is open: a job of it ${untilWords(settlesAt)}, so its callbacks may still grow.`

/** A count of a month, or so many of so many; `grows` while a job of the month can still come back. */
type Figure = { key: string; words: string } & (
  | { count: (month: MonthInLetter) => number }
  | { share: (month: MonthInLetter) => CaseShare; grows?: true }
)

const figures: readonly Figure[] = [
  { key: 'opened', words: 'Cases opened', count: ({ opened }) => opened },
  ...endingWays.map((way) => ({
    key: way,
    words: `Ended: ${wayWords[way][0].toLowerCase()}`,
    count: ({ endedAs }: MonthInLetter) => endedAs[way],
  })),
  { key: 'callbacks', words: 'Jobs that came back', share: ({ cameBack }) => cameBack, grows: true },
  {
    key: 'fixes',
    words: 'Proven repairs that came back',
    share: ({ fixesThatCameBack }) => fixesThatCameBack,
    grows: true,
  },
  { key: 'swaps', words: 'Switches replaced', count: ({ swaps }) => swaps },
  {
    key: 'swapsMissing',
    words: 'Of these, something was missing',
    share: ({ swapsMissing }) => swapsMissing,
  },
  { key: 'readings', words: 'Repairs read before and after', share: ({ readings }) => readings },
  { key: 'co', words: 'Repairs with CO in room and flue', share: ({ coTests }) => coTests },
  {
    key: 'leftOff',
    words: 'Furnaces left off by a notice',
    count: ({ events }) => events['left off and tagged'] + events['left off, no tag on record'],
  },
  {
    key: 'high co',
    words: 'CO above its limit',
    count: ({ events }) => events['CO in the room'] + events['CO in the flue'],
  },
  { key: 'jumpers', words: 'Jumpers or bypasses found', count: ({ events }) => events['jumper or bypass'] },
  { key: 'reports', words: 'Reports of ratings recorded', count: ({ reports }) => reports },
  { key: 'answered', words: 'Rating requests answered', count: ({ answered }) => answered },
]

const rowsOf = (month: MonthInLetter, before: MonthInLetter): LetterRow[] =>
  figures.map((figure) => ({
    key: figure.key,
    words: figure.words,
    month: inMonth(figure, month),
    before: inMonth(figure, before),
    change: changeOf(figure, month, before),
  }))

function inMonth(figure: Figure, month: MonthInLetter): string {
  if ('count' in figure) return String(figure.count(month))
  const words = shareWords(figure.share(month))
  return figure.grows && month.standing === 'open' ? `${words}, open` : words
}

function changeOf(figure: Figure, month: MonthInLetter, before: MonthInLetter): string {
  if ('count' in figure) return changeWords(figure.count(month), figure.count(before))
  const isOpen = figure.grows === true && [month, before].some(({ standing }) => standing === 'open')
  return shareChange(figure.share(month), figure.share(before), isOpen)
}
