import { causes } from '@/lib/catalogue/causes'
import { endingWays } from '@/lib/records/kinds/ending'
import { type CaseFacts, type TeamFacts, teamFactsOf } from '@/lib/records/view/callbacks/caseFacts'
import { remedies } from '@/lib/records/view/callbacks/remedy'

const dayMs = 86_400_000

/** A generator of numbers from 0 to 1 that gives the same ones for the same seed (mulberry32, public domain). */
export function numbersFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/**
 * Invented facts of many cases: of a few furnaces for each ten cases, most of them repaired, one in eight called back
 * within two months.
 * @param from first day, ISO 8601
 */
export function manyFacts(seed: number, count: number, from: string, years: number): TeamFacts {
  const random = numbersFrom(seed)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const start = Date.parse(from)
  const furnaces = Math.ceil(count / 3)
  const people = Array.from({ length: Math.max(2, Math.ceil(count / 2500)) }, (_, place) => `person ${place}`)
  const cases: CaseFacts[] = []
  let called: { furnace: number; at: number } | undefined
  for (let place = 0; place < count; place++) {
    const furnace = called?.furnace ?? Math.floor(random() * furnaces)
    const openedAt =
      called?.at ?? start + Math.floor(random() * years * 365.25) * dayMs + Math.floor(random() * dayMs)
    const endedAt = openedAt + Math.floor(random() * 4 * dayMs)
    const how = random() < 0.6 ? 'repaired and proven' : pick(endingWays)
    const isEnded = random() < 0.97
    called =
      isEnded && random() < 0.13 ? { furnace, at: endedAt + Math.floor(random() * 60 * dayMs) } : undefined
    cases.push({
      id: `case ${String(place).padStart(7, '0')}`,
      furnaceId: `furnace ${furnace}`,
      ...(furnace % 7 === 0 ? {} : { branch: `branch ${furnace % 6}` }),
      ...(furnace % 11 === 0 ? {} : { rangeId: `range ${furnace % 30}` }),
      circuit: random() < 0.85 ? 'proving circuit' : 'something else',
      openedAt,
      ...(isEnded ? { ended: { at: endedAt, how, by: pick(people) } } : {}),
      ...(isEnded && random() < 0.95 ? { cause: pick(causes).id } : {}),
      remedy: pick(remedies),
      readBefore: random() < 0.8,
      readAfter: random() < 0.7,
      ...(random() < 0.9 ? { minutes: 30 + Math.floor(random() * 150) } : {}),
      parts: random() < 0.4 ? [{ key: `part ${Math.floor(random() * 60)}`, words: 'a part' }] : [],
    })
  }
  const watchEnds = cases
    .filter(() => random() < 0.01)
    .map(({ furnaceId, openedAt }) => ({ furnaceId, at: openedAt, endedBy: 'furnace replaced' as const }))
  return teamFactsOf(cases, watchEnds)
}
