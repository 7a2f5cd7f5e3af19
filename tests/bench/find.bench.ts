import Fuse from 'fuse.js'
import { buildFindIndex, find } from '@/lib/core/find'
import { foldLookAlikes } from '@/lib/core/find/lookAlikes'
import { fuseOptions } from '@/lib/core/find/nearTexts'
import { fold } from '@/lib/core/find/normalise'
import { seededRandom } from '@/lib/core/seeded'
import { confuse, type InventedEntry, inventedEntries, misspell, pick } from '@/tests/core/find/invented'
import { median, quantile, timed } from './measure'

export const name = 'find'

type Print = (line: string) => void
type Typed = { key: string; typed: string }
type Searcher = (typed: string) => { key: string }[]

const folded = (text: string) => foldLookAlikes(fold(text))

/** Part numbers as typed: misspelt with one or two slips, or with look-alikes. */
function typedNumbers(entries: InventedEntry[], count: number, seed: number, type: typeof misspell): Typed[] {
  const random = seededRandom(seed)
  return Array.from({ length: count }, () => {
    const { key, texts } = pick(random, entries)
    return { key, typed: type(random, texts[0]!) }
  })
}

const recall = (cases: Typed[], search: Searcher) =>
  cases.filter(({ key, typed }) => search(typed).some((match) => match.key === key)).length / cases.length

/** The searchers take turns at each number, so that whatever else the machine does falls on all of them alike. */
function race(cases: Typed[], searchers: Searcher[]) {
  const lanes = searchers.map((search) => ({ search, milliseconds: [] as number[], found: 0 }))
  for (const { key, typed } of cases) {
    for (const lane of lanes) {
      const { result, milliseconds } = timed(() => lane.search(typed))
      lane.milliseconds.push(milliseconds)
      if (result.some((match) => match.key === key)) lane.found++
    }
  }
  return lanes.map(({ milliseconds, found }) => ({
    median: median(milliseconds),
    recall: found / cases.length,
  }))
}

function against(size: number, raced: number, print: Print): void {
  const entries = inventedEntries(size, 61)
  const foldedEntries = entries.map(({ key, texts }) => ({ key, texts: texts.map(folded) }))
  const options = { ...fuseOptions(9), keys: ['texts'] }
  const builds = Array.from({ length: 5 }, () => ({
    ours: timed(() => buildFindIndex(entries)),
    fuse: timed(() => Fuse.createIndex(['texts'], entries)),
  }))
  const index = builds[0]!.ours.result
  const plainFuse = new Fuse(
    entries,
    { ...options, isCaseSensitive: false, ignoreDiacritics: true },
    builds[0]!.fuse.result,
  )
  const foldedFuse = new Fuse(foldedEntries, options, Fuse.createIndex(['texts'], foldedEntries))

  const ours: Searcher = (typed) => find(index, typed, 5)
  const plain: Searcher = (typed) => plainFuse.search(typed, { limit: 5 }).map(({ item }) => item)
  const prepared: Searcher = (typed) => foldedFuse.search(folded(typed), { limit: 5 }).map(({ item }) => item)
  recall(typedNumbers(entries, 100, 62, misspell), ours)
  for (const search of [plain, prepared]) recall(typedNumbers(entries, 2, 62, misspell), search)

  const misspelt = typedNumbers(entries, raced, 63, misspell)
  const [mine, given, before] = race(misspelt, [ours, plain, prepared])
  const middle = (which: 'ours' | 'fuse') => median(builds.map((build) => build[which].milliseconds))
  const alone = (type: typeof misspell, seed: number) =>
    recall(typedNumbers(entries, 1000, seed, type), ours).toFixed(3)
  print(`${size} entries, ${index.texts.length} different texts`)
  print(`  ${raced} misspelt numbers, limit 5, median times:`)
  print(
    `    find                             ${mine!.median.toFixed(1)} ms, recall@5 ${mine!.recall.toFixed(3)}`,
  )
  for (const [what, other] of [
    ['as given:       ', given],
    ['folded before:  ', before],
  ] as const) {
    const times = (other!.median / mine!.median).toFixed(0)
    print(
      `    fuse.js on texts ${what}${other!.median.toFixed(0)} ms, recall@5 ${other!.recall.toFixed(3)}: find is ${times} times as fast`,
    )
  }
  print(
    `  recall@5 of find alone: ${alone(misspell, 64)} on 1000 misspelt numbers, ${alone(confuse, 65)} on 1000 with look-alikes`,
  )
  print(
    `  building the index takes ${(middle('ours') / middle('fuse')).toFixed(1)} times as long as fuse.js's own, ${middle('ours').toFixed(0)} ms`,
  )
  typing(index, entries, print)
}

/** One look-up a keystroke: part numbers, then maker and position and number, typed from the first character on. */
function typing(index: ReturnType<typeof buildFindIndex>, entries: InventedEntry[], print: Print): void {
  const random = seededRandom(66)
  const keystrokes = (text: string) =>
    Array.from(text, (_, at) => timed(() => find(index, text.slice(0, at + 1), 10)).milliseconds)
  const chosen = Array.from({ length: 30 }, () => pick(random, entries).texts)
  const numbers = chosen.flatMap((texts) => keystrokes(texts[0]!))
  const words = chosen.flatMap((texts) => keystrokes([texts.at(-2), texts.at(-1), texts[0]].join(' ')))
  for (const [what, each] of [
    ['a number', numbers],
    ['maker, position and number', words],
  ] as const) {
    const [half, most] = [median(each), quantile(each, 0.95)]
    print(
      `  typing ${what}: median ${half.toFixed(1)} ms a keystroke, 95 of 100 within ${most.toFixed(1)} ms`,
    )
  }
}

export async function run(print: Print): Promise<void> {
  against(20_000, 40, print)
  against(100_000, 20, print)
}
