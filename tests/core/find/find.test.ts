import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildFindIndex, type FindEntry, find } from '@/lib/core/find'
import { foldLookAlikes } from '@/lib/core/find/lookAlikes'
import { fold } from '@/lib/core/find/normalise'
import { longestTyped } from '@/lib/core/find/readTyped'
import { seededRandom } from '@/lib/core/seeded'
import { careless, inventedEntries } from './invented'

const frozen = (entries: FindEntry[]) =>
  Object.freeze(entries.map((entry) => Object.freeze({ ...entry, texts: Object.freeze([...entry.texts]) })))

const shelf = frozen([
  { key: 'a', texts: ['KEX-00471-R', 'WXY080*12-3B', 'Wexhollow', 'low fire'] },
  { key: 'b', texts: ['KEX-00417-R', 'WXY100*12-3B', 'Wexhollow', 'high fire'] },
  { key: 'c', texts: ['QN 852/9013', '9013 8522 7', 'QUR060**071-2C', 'Quistane', 'blocked drain'] },
  { key: 'd', texts: ['SO1L-B2', 'Ödenlund', 'low fire'] },
  { key: 'e', texts: ['5011-82', 'Garrund Works', 'low fire'] },
  { key: 'f', texts: ['771Q.4063.D', '—', 'Tibbing & Hale', 'vent pressure'] },
])
const index = buildFindIndex(shelf)
const keys = (typed: string, limit = 5) => find(index, typed, limit).map(({ key }) => key)
const first = (typed: string) => find(index, typed, 1)[0]

const strange = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.string({ unit: fc.constantFrom(...'AO0I1LS5-* '), maxLength: 12 }),
  fc.constantFrom(
    '',
    ' ',
    '*',
    '* *',
    '\ud800',
    '__proto__',
    'constructor',
    '٣٤',
    'ﷺ'.repeat(80),
    '7'.repeat(3000),
  ),
)
const strangeList = fc
  .array(fc.array(strange, { maxLength: 4 }), { maxLength: 12 })
  .map((lists) => frozen(lists.map((texts, at) => ({ key: `k${at}`, texts }))))

describe('find(index, typed, limit)', () => {
  test('finds a number however its case, dashes and blanks are typed, with score 0', () => {
    for (const typed of [
      'KEX-00471-R',
      'kex00471r',
      'KEX 00471 R',
      'k e x.00471/r',
      'ＫＥＸ－００４７１－Ｒ',
      ' kex–00471–r ',
    ]) {
      expect(first(typed), typed).toEqual({ key: 'a', score: 0, text: 0, matched: [[0, 11]] })
    }
  })

  test('puts the very number before its look-alike, and the look-alike before all else', () => {
    expect(keys('SO1LB2', 2)).toEqual(['d', 'e'])
    expect(keys('501182', 2)).toEqual(['e', 'd'])
    expect(first('S0IIBZ')).toMatchObject({ score: 0.01, matched: [[0, 7]] })
  })

  test('an exact number always comes first, then one exact but for look-alikes, in any list (property)', () => {
    fc.assert(
      fc.property(strangeList, fc.nat(), fc.nat(), (entries, whichEntry, whichText) => {
        const entry = entries[whichEntry % Math.max(1, entries.length)]
        const typed = entry?.texts[whichText % Math.max(1, entry.texts.length)]
        fc.pre(
          typed !== undefined &&
            typed.length <= longestTyped &&
            /[^*]/.test(fold(typed)) &&
            fold(typed).length <= longestTyped,
        )
        const all = find(buildFindIndex(entries), typed, entries.length)
        const kinds = all.map((match) => {
          const folded = entries.find(({ key }) => key === match.key)!.texts.map(fold)
          if (folded.includes(fold(typed))) return 0
          return folded.map(foldLookAlikes).includes(foldLookAlikes(fold(typed))) ? 1 : 2
        })
        expect(kinds[0]).toBe(0)
        expect(kinds).toEqual([...kinds].sort((one, other) => one - other))
        expect(all.map(({ score }) => (score === 0 ? 0 : score < 0.02 ? 1 : 2))).toEqual(kinds)
      }),
      { seed: 11, numRuns: 300 },
    )
  })

  test('a number from the list, typed carelessly, comes first (property over an invented list)', () => {
    const entries = inventedEntries(3000, 21)
    const large = buildFindIndex(entries)
    const random = seededRandom(22)
    for (let at = 0; at < entries.length; at += 7) {
      const { key, texts } = entries[at]!
      expect(find(large, careless(random, texts[0]!), 1)[0], texts[0]).toMatchObject({
        key,
        score: 0,
        text: 0,
      })
    }
  })

  test('finds an entry by its older number and says which text it was', () => {
    expect(first('901385227')).toMatchObject({ key: 'c', text: 1, score: 0 })
  })

  test('finds a number with one wrong, missing, doubled or swapped character', () => {
    for (const typed of [
      '77IQ.4063.D',
      '771Q.4068.D',
      '771Q.463.D',
      '771QQ.4063.D',
      '717Q.4063.D',
      '771Q4036D',
    ]) {
      expect(first(typed)?.key, typed).toBe('f')
    }
  })

  test('finds a number with two slips', () => {
    const typed = {
      KEX0047IPP: 'a',
      K3X00741R: 'a',
      '7714Q063D': 'f',
      '7Q14063': 'f',
      QN8529913: 'c',
      QM852903: 'c',
    }
    for (const [text, key] of Object.entries(typed)) expect(first(text)?.key, text).toBe(key)
  })

  test('finds a number by its middle or its tail, and marks them', () => {
    expect(first('4063')).toMatchObject({ key: 'f', text: 0, matched: [[5, 9]] })
    expect(first('529013')).toMatchObject({ key: 'c', text: 0, matched: [[4, 11]] })
  })

  test('puts what begins with the typed before what merely holds it', () => {
    const two = buildFindIndex(
      frozen([
        { key: 'a', texts: ['X4713'] },
        { key: 'b', texts: ['4713X'] },
      ]),
    )
    expect(find(two, '4713', 2).map(({ key }) => key)).toEqual(['b', 'a'])
  })

  test('finds the pattern that a whole model number stands for, exactly or with a look-alike or a slip', () => {
    expect(first('WXY080A123B')).toMatchObject({ key: 'a', text: 1, matched: [[0, 12]] })
    expect(first('wxy 100 7 12-3b')).toMatchObject({ key: 'b', text: 1 })
    expect(first('QUR060AB071-2C')).toMatchObject({ key: 'c', text: 2 })
    expect(first('WXYO8OA1Z3B')).toMatchObject({ key: 'a', text: 1 })
    expect(first('QUR060ABC0171-2C')).toMatchObject({ key: 'c', text: 2 })
  })

  test('puts a pattern that says more before one that says less', () => {
    const two = buildFindIndex(
      frozen([
        { key: 'a', texts: ['XY8*'] },
        { key: 'b', texts: ['XY80*12'] },
      ]),
    )
    expect(find(two, 'XY80A12', 2).map(({ key }) => key)).toEqual(['b', 'a'])
  })

  test('words may be spread over several texts, in any order, misspelt', () => {
    expect(keys('wexhollow high fire')[0]).toBe('b')
    expect(keys('high fire wexholow')[0]).toBe('b')
    expect(keys('wexhollow 471')[0]).toBe('a')
    expect(keys('quistane 852 9013')[0]).toBe('c')
    expect(keys('odenlund low fier')[0]).toBe('d')
    expect(keys('tibbing hale 4063')[0]).toBe('f')
  })

  test('marks the text that accounts for most of the words, with the blanks between them', () => {
    expect(first('hale tibbing 40')).toMatchObject({ key: 'f', text: 2, matched: [[0, 14]] })
  })

  test('leaves out entries that explain less than about half of the words', () => {
    expect(keys('low zzzzzzzzz')).toEqual([])
  })

  test('marks places in the text as given, accents and dashes included', () => {
    expect(first('denlun')).toMatchObject({ key: 'd', text: 1, matched: [[1, 7]] })
    expect(first('ex004')).toMatchObject({ matched: [[1, 7]] })
  })

  test('gives ties in the order of their keys, whatever the order of the list', () => {
    const same = ['m', 'z', 'B', 'a', '10', '9'].map((key) => ({ key, texts: ['low fire'] }))
    const sorted = ['10', '9', 'B', 'a', 'm', 'z']
    expect(find(buildFindIndex(same), 'low fire', 6).map(({ key }) => key)).toEqual(sorted)
    expect(find(buildFindIndex([...same].reverse()), 'lwo fire', 6).map(({ key }) => key)).toEqual(sorted)
  })

  test('gives nothing for what has no letter or digit', () => {
    for (const typed of ['', '   ', '-', '*', '* *', '—/.', '🔥', '\ud800'])
      expect(find(index, typed, 5), typed).toEqual([])
  })

  test('gives nothing from an empty list, or for something wholly other', () => {
    expect(find(buildFindIndex([]), 'KEX', 5)).toEqual([])
    expect(find(buildFindIndex([{ key: 'a', texts: [] }]), 'KEX', 5)).toEqual([])
    expect(keys('vvvvvvvvvvvv')).toEqual([])
  })

  test('reads no more than 200 characters', () => {
    const start = 'KEX-00471-R'.padEnd(longestTyped)
    expect(find(index, `${start}${'QN 852/9013 '.repeat(5000)}`, 5)).toEqual(find(index, start, 5))
  })

  test('finds a long text by its first 400 characters', () => {
    const long = buildFindIndex([
      { key: 'a', texts: [`${'QN 852/9013 '.repeat(30)}KEX${'-'.repeat(5000)}TIB`] },
    ])
    expect(find(long, 'KEX', 1)[0]).toMatchObject({ key: 'a', matched: [[360, 363]] })
    expect(find(long, 'TIB', 1)).toEqual([])
  })

  test('a shorter answer is the beginning of a longer one (property over an invented list)', () => {
    const large = buildFindIndex(inventedEntries(500, 31))
    const typed = fc.oneof(
      fc.stringMatching(/^[0-9A-Z*]{1,9}$/),
      fc.stringMatching(/^(low|high|quist|wex|44|7Q)( (fire|hale|ane|[0-9]{1,4})){1,3}$/),
    )
    fc.assert(
      fc.property(typed, fc.integer({ min: 1, max: 30 }), (text, limit) => {
        expect(find(large, text, limit)).toEqual(find(large, text, 60).slice(0, limit))
      }),
      { seed: 12, numRuns: 150 },
    )
  })

  test('for any list and anything typed: no throw, at most `limit`, best first, places inside the text, the same every time (property)', () => {
    const typed = fc.oneof(
      strange,
      fc.array(strange, { maxLength: 12 }).map((words) => words.join(' ')),
    )
    fc.assert(
      fc.property(strangeList, typed, fc.integer({ min: 1, max: 20 }), (entries, text, limit) => {
        const made = buildFindIndex(entries)
        const matches = find(made, text, limit)
        expect(matches.length).toBeLessThanOrEqual(limit)
        expect(new Set(matches.map(({ key }) => key)).size).toBe(matches.length)
        matches.forEach((match, at) => {
          expect(match.score >= 0 && match.score < 1).toBe(true)
          if (at > 0) expect(match.score).toBeGreaterThanOrEqual(matches[at - 1]!.score)
          const found = entries.find(({ key }) => key === match.key)!.texts[match.text]!
          match.matched.forEach(([start, end], range) => {
            expect(start).toBeLessThan(end)
            expect(start).toBeGreaterThanOrEqual(range === 0 ? 0 : match.matched[range - 1]![1])
            expect(end).toBeLessThanOrEqual(found.length)
          })
          expect(match.matched.length).toBeGreaterThan(0)
        })
        expect(find(made, text, limit)).toEqual(matches)
      }),
      { seed: 13, numRuns: 300 },
    )
  })

  test('throws RangeError for a limit that is not a whole number of at least 1', () => {
    for (const limit of [0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => find(index, 'KEX', limit), String(limit)).toThrow(RangeError)
    }
  })
})

describe('buildFindIndex(entries)', () => {
  test('throws RangeError when two entries have the same key, and names it', () => {
    expect(() =>
      buildFindIndex([
        { key: 'a', texts: [] },
        { key: 'b', texts: [] },
        { key: 'a', texts: ['x'] },
      ]),
    ).toThrow(new RangeError("buildFindIndex: two entries have the key 'a'"))
  })

  test('gives the same answers for any order of the list (property)', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...shelf], { minLength: shelf.length }),
        fc.constantFrom('low', 'fire 471', '0l1', 'KEX0471R'),
        (entries, typed) => {
          expect(find(buildFindIndex(entries), typed, 6)).toEqual(find(index, typed, 6))
        },
      ),
      { seed: 14, numRuns: 50 },
    )
  })
})
