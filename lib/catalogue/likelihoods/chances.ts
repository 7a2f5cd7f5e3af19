import type { Chances } from '@/lib/core/diagnosis'
import { chanceOfWord, type LikelihoodWord, mostNamedTogether } from './words'

/** A word for some of the values of one finding; nothing is said about the others. */
export type WordsByValue = Readonly<Partial<Record<string, LikelihoodWord>>>

/**
 * Turns words into a chance for every value: each named value has its word's chance, the rest is shared among the
 * others in proportion to their usual chances (equally where none are given). Where the words together leave less
 * than 1 − mostNamedTogether, they are scaled down to leave that; where all values are named, to add up to 1.
 * @throws RangeError when a word is given for a value that the finding does not have, or for none
 * @example chancesFrom(['seen', 'ruled out'], { seen: 'usually' }) // { seen: 0.75, 'ruled out': 0.25 }
 */
export function chancesFrom(values: readonly string[], words: WordsByValue, usual?: Chances): Chances {
  const stranger = Object.keys(words).find((value) => !values.includes(value))
  if (stranger !== undefined) throw new RangeError(`chancesFrom was given a word for '${stranger}'`)
  const named = new Map<string, number>()
  for (const value of values) {
    const word = words[value]
    if (word !== undefined) named.set(value, chanceOfWord[word])
  }
  if (named.size === 0) throw new RangeError('chancesFrom requires a word for at least one value')
  const others = values.filter((value) => !named.has(value))
  const together = [...named.values()].reduce((sum, chance) => sum + chance, 0)
  const most = others.length === 0 ? 1 : mostNamedTogether
  const scale = others.length === 0 || together > most ? most / together : 1
  const weightOf = (value: string) => usual?.[value] ?? 1
  const weights = others.reduce((sum, value) => sum + weightOf(value), 0)
  const left = 1 - together * scale
  return Object.fromEntries(
    values.map((value) => {
      const chance = named.get(value)
      return [value, chance === undefined ? (left * weightOf(value)) / weights : chance * scale]
    }),
  )
}
