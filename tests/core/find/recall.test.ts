import Fuse from 'fuse.js'
import { beforeAll, describe, expect, test } from 'vitest'
import { buildFindIndex, type FindIndex, find } from '@/lib/core/find'
import { foldLookAlikes } from '@/lib/core/find/lookAlikes'
import { fuseOptions } from '@/lib/core/find/nearTexts'
import { fold } from '@/lib/core/find/normalise'
import { seededRandom } from '@/lib/core/seeded'
import {
  careless,
  concrete,
  confuse,
  type InventedEntry,
  inventedEntries,
  misspell,
  pick,
  slip,
  slipKinds,
} from './invented'

const entries = inventedEntries(5000, 41)
const numberLength = 9
let index: FindIndex
beforeAll(() => {
  index = buildFindIndex(entries)
})

type Typed = { entry: InventedEntry; typed: string }
type Random = () => number

const sample = (
  count: number,
  seed: number,
  type: (random: Random, entry: InventedEntry) => string,
): Typed[] => {
  const random = seededRandom(seed)
  return Array.from({ length: count }, () => {
    const entry = pick(random, entries)
    return { entry, typed: type(random, entry) }
  })
}
const share = (cases: Typed[], isFound: (one: Typed) => boolean) =>
  cases.filter(isFound).length / cases.length
const foundInFive = ({ entry, typed }: Typed) => find(index, typed, 5).some(({ key }) => key === entry.key)
const characters = (entry: InventedEntry) => fold(entry.texts[0]!)

describe('recall@5 of find on 5,000 invented switches', () => {
  test("is at least fuse.js's own on misspelt numbers, as given and folded beforehand, in a fraction of the time", () => {
    const cases = sample(50, 42, (random, { texts }) => misspell(random, texts[0]!))
    const folded = (text: string) => foldLookAlikes(fold(text))
    const options = { ...fuseOptions(numberLength), keys: ['texts'] }
    const plainFuse = new Fuse(entries, { ...options, isCaseSensitive: false, ignoreDiacritics: true })
    const foldedFuse = new Fuse(
      entries.map(({ key, texts }) => ({ key, texts: texts.map(folded) })),
      options,
    )
    const inFive = (fuse: Fuse<InventedEntry>, typed: string, key: string) =>
      fuse.search(typed, { limit: 5 }).some(({ item }) => item.key === key)
    const timed = (isFound: (one: Typed) => boolean) => {
      const started = performance.now()
      return { recall: share(cases, isFound), milliseconds: performance.now() - started }
    }

    const ours = timed(foundInFive)
    const plain = timed(({ entry, typed }) => inFive(plainFuse, typed, entry.key))
    const same = timed(({ entry, typed }) => inFive(foldedFuse, folded(typed), entry.key))
    expect(ours.recall).toBeGreaterThanOrEqual(plain.recall)
    expect(ours.recall).toBeGreaterThanOrEqual(same.recall)
    expect(Math.min(plain.milliseconds, same.milliseconds) / ours.milliseconds).toBeGreaterThan(3)
  }, 60_000)

  test('is at least 0.95 on one or two slips, and 0.97 on one slip of any kind', () => {
    const oneOrTwo = sample(400, 43, (random, { texts }) => misspell(random, texts[0]!))
    expect(share(oneOrTwo, foundInFive)).toBeGreaterThanOrEqual(0.95)
    for (const kind of slipKinds) {
      const cases = sample(200, 44, (random, { texts }) => careless(random, slip(random, texts[0]!, kind)))
      expect(share(cases, foundInFive), kind).toBeGreaterThanOrEqual(0.97)
    }
  })

  test('is at least 0.98 on look-alikes', () => {
    const cases = sample(500, 45, (random, { texts }) => confuse(random, texts[0]!))
    expect(share(cases, foundInFive)).toBeGreaterThanOrEqual(0.98)
  })

  test('is at least 0.98 on whole model numbers that a pattern stands for, look-alikes included', () => {
    const model = ({ texts }: InventedEntry) => texts.at(-3)!
    const cases = sample(500, 46, (random, entry) => concrete(random, model(entry))).filter(({ entry }) =>
      model(entry).includes('*'),
    )
    const foundModel = (typed: string, entry: InventedEntry) =>
      find(index, typed, 5).some(({ key, text }) => {
        const found = entries.find((other) => other.key === key)!
        return text === found.texts.length - 3 && model(found) === model(entry)
      })
    const random = seededRandom(47)
    expect(cases.length).toBeGreaterThan(300)
    expect(share(cases, ({ entry, typed }) => foundModel(typed, entry))).toBeGreaterThanOrEqual(0.98)
    expect(
      share(cases, ({ entry, typed }) => foundModel(confuse(random, typed), entry)),
    ).toBeGreaterThanOrEqual(0.98)
  })

  test('is whole on a middle or a tail of three to eight characters: every entry that holds it comes first (brute force)', () => {
    const forms = entries.map(({ key, texts }) => ({
      key,
      texts: texts.map((text) => foldLookAlikes(fold(text))),
    }))
    const parts = sample(150, 48, (random, entry) => {
      const length = 3 + Math.floor(6 * random())
      const all = characters(entry)
      const from = random() < 0.5 ? all.length - length : Math.floor((all.length - length) * random())
      return all.slice(Math.max(0, from), Math.max(0, from) + length)
    })
    for (const { typed } of parts) {
      const part = foldLookAlikes(typed)
      const holders = forms
        .filter(({ texts }) => texts.some((text) => text.includes(part)))
        .map(({ key }) => key)
      expect(
        find(index, typed, holders.length)
          .map(({ key }) => key)
          .sort(),
        typed,
      ).toEqual(holders)
    }
  })

  test('is at least 0.95 on the maker, misspelt, with the last five characters, in either order', () => {
    const cases = sample(200, 50, (random, entry) => {
      const words = [slip(random, entry.texts.at(-2)!, 'missing'), characters(entry).slice(-5).toLowerCase()]
      return (random() < 0.5 ? words : words.reverse()).join(' ')
    })
    expect(share(cases, foundInFive)).toBeGreaterThanOrEqual(0.95)
  })
})
