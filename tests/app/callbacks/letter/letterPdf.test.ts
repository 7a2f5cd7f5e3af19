import { describe, expect, test } from 'vitest'
import { type LetterParts, letterParts } from '@/app/callbacks/letter/letterParts'
import { letterPdf } from '@/app/callbacks/letter/letterPdf'
import { printable } from '@/app/callbacks/letter/printable'
import { letterFigures } from '@/lib/records/view/letter/letterFigures'
import {
  at,
  combustion,
  ending,
  hot,
  ids,
  notice,
  opened,
  reading,
  repair,
  said,
  team,
} from '../../../records/view/case/team'
import { pagesOf, pdfText, withoutBlanks } from './pdfText'

const made = new Date(at(40))
const head = { seq: 41, hash: 'ab12'.repeat(16) }
const file = team(
  opened,
  reading(0.4),
  repair({ switchReplaced: true, fittedPart: ids.newPart, positionId: ids.low }),
  hot(0.7),
  combustion(),
  ending({ how: 'repaired, not proven' }),
  notice(),
)
const parts = letterParts(letterFigures(file, '2026-01', at(40)), file, {
  now: at(40),
  head,
  minutesAhead: -420,
})

const everyText = ({
  title,
  standing,
  means,
  columns,
  rows,
  todoTitle,
  todos,
  foot,
}: LetterParts): string[] => [
  title,
  standing,
  means,
  ...columns,
  ...rows.flatMap(({ words, month, before, change }) => [words, month, before, change]),
  todoTitle,
  ...todos.flatMap(({ words, todo, first }) => [words, todo, ...first]),
  ...foot,
]

describe('letterPdf(parts, made)', () => {
  test('shows every word and figure of the letter, in its order, on one page', async () => {
    const pdf = await letterPdf(parts, made, false)
    expect(Buffer.from(pdf.subarray(0, 8)).toString('latin1')).toMatch(/^%PDF-1\./)
    const text = pdfText(pdf)
    let place = 0
    for (const words of everyText(parts)) {
      const next = text.indexOf(withoutBlanks(printable(words)), place)
      expect(next, words).toBeGreaterThanOrEqual(place)
      place = next
    }
    expect(text).toContain(head.hash)
    expect(pagesOf(pdf)).toBe(1)
  })

  test('the product’s own words need no character that the standard fonts lack', () => {
    for (const words of everyText(parts))
      expect(printable(words).replaceAll('–', '−')).toBe(words.replaceAll('–', '−'))
  })

  test('a letter with every list full still fits one page', async () => {
    const todos = Array.from({ length: 9 }, (_, place) => ({
      key: String(place),
      words: `Furnaces with two or more repeats: ${place}`,
      todo: 'Read the cases together before anybody goes again: the cause named first may not be the cause.',
      first: [
        'Long Lane by the Old Mill 112, back house: LF2-080-B-PROPANE, serial S2204-118-REBUILT',
        'Mill Row 12: LF2',
      ],
    }))
    expect(pagesOf(await letterPdf({ ...parts, todos }, made, false))).toBe(1)
  })

  test('a name that cannot be printed is marked, and the page says so', async () => {
    const todos = [{ key: 'one', words: 'Furnaces left off: 1', todo: 'See to it.', first: ['Łódź 7'] }]
    const text = pdfText(await letterPdf({ ...parts, todos }, made, false))
    expect(text).toContain('¿ódz7')
    expect(text).toContain(withoutBlanks('¿ stands for a character that this page cannot print.'))
    expect(pdfText(await letterPdf(parts, made, false))).not.toContain('¿stands')
  })

  test('nothing to do is said in its place', async () => {
    const text = pdfText(await letterPdf({ ...parts, todos: [] }, made, false))
    expect(text).toContain(withoutBlanks(parts.nothingTodo))
  })

  test('it is compressed unless asked not to be', async () => {
    const [small, plain] = [await letterPdf(parts, made), await letterPdf(parts, made, false)]
    expect(small.length).toBeLessThan(plain.length)
    expect(pdfText(small)).toBe(pdfText(plain))
  })
})

describe('letterParts(figures, file, { now, head })', () => {
  const rowOf = (key: string) => parts.rows.find((row) => row.key === key)

  test('each figure of the month beside the one before, with what changed', () => {
    expect(rowOf('opened')).toEqual({
      key: 'opened',
      words: 'Cases opened',
      month: '1',
      before: '0',
      change: '1 more',
    })
    expect(rowOf('jumpers')).toMatchObject({ month: '0', before: '0', change: 'the same' })
    expect(rowOf('callbacks')).toMatchObject({
      month: '0 of 1, open',
      before: 'none',
      change: 'open, not compared',
    })
    expect(rowOf('co')).toMatchObject({ month: '1 of 1', before: 'none', change: 'too few to compare' })
  })

  test('an open month is said to be open, and until when', () => {
    expect(parts.standing).toContain(
      'January 2026 is open: a job of it can come back until 2 Mar 2026, so its callbacks may still grow.',
    )
    expect(parts.standing).toContain('December 2025 is settled: its callbacks no longer change.')
  })

  test('what to do comes from what is left undone, what can hurt people first', () => {
    expect(parts.todos.map(({ words }) => words)).toEqual([
      'Furnaces left off: 1',
      'Repairs not proven: 1',
      'Ratings most used and least verified: 1',
    ])
    expect(parts.todos[0]?.first).toEqual(['Mill Row 12: LF2-080-B, serial S2204-118'])
  })

  test('a list that is longer than a page has room for says how much more there is, and where', () => {
    const figures = letterFigures(file, '2026-01', at(40))
    const [one] = figures.undone.leftOff
    const five = { ...figures, undone: { ...figures.undone, leftOff: [one!, one!, one!, one!, one!] } }
    const { todos } = letterParts(five, file, { now: at(40), head })
    expect(todos[0]?.words).toBe('Furnaces left off: 5')
    expect(todos[0]?.first).toHaveLength(3)
    expect(todos[0]?.first.at(-1)).toBe('and 3 more, in Left undone')
  })

  test('the hash that the log had, and when; without it that it is not known', () => {
    expect(parts.foot[0]).toBe('Made from the records as they stood 9 Feb 2026, 05:00, UTC−7.')
    expect(parts.foot[1]).toContain(`41 entries. Head hash ${head.hash}.`)
    const unknown = letterParts(letterFigures(file, '2026-01', at(40)), file, {
      now: at(40),
      head: undefined,
    })
    expect(unknown.foot[1]).toContain('not known here')
  })

  test('a switch found unsuitable comes before everything', () => {
    const found = said(
      'found fitted',
      {
        furnaceId: ids.furnace,
        printed: 'ADJ',
        what: 'adjustable or general-purpose switch',
        fittedWhen: 'not known',
        fittedBy: 'us',
        foundOn: '2026-01-12',
      },
      { at: at(12) },
    )
    const with1 = team(opened, notice(), found)
    const { todos } = letterParts(letterFigures(with1, '2026-01', at(40)), with1, { now: at(40), head })
    expect(todos[0]?.words).toBe('Unsuitable switches still fitted: 1')
  })
})
