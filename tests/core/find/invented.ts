import { seededRandom } from '@/lib/core/seeded'

/**
 * Seeded invented lists of switches: part numbers, older part numbers, model numbers with and without a wildcard,
 * makers and positions, and the slips people make when they type them. Makers and numbering are made up, and
 * resemble no real one as far as we know.
 */
export type InventedEntry = { key: string; texts: string[] }

type Random = () => number

const makers = [
  ['Velmoor Heating', 'V'],
  ['Quistane', 'Q'],
  ['Tibbing & Hale', 'T'],
  ['Garrund Works', 'G'],
  ['Ombrick', 'M'],
  ['Pellowick', 'P'],
  ['Stavemere', 'S'],
  ['Ödenlund', 'D'],
  ['Kestrow Brothers', 'K'],
  ['Wexhollow', 'W'],
] as const

const positions = [
  'low fire',
  'high fire',
  'blocked drain',
  'vent pressure',
  'inducer proving',
  'single stage',
]

const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ'
const confusable = 'O0I1L1S5B8Z2G6'

const below = (random: Random, count: number) => Math.floor(random() * count)
export const pick = <T>(random: Random, list: ArrayLike<T>): T => list[below(random, list.length)] as T
const digits = (value: number, width: number) => String(Math.floor(value) % 10 ** width).padStart(width, '0')

/** Running numbers, so that neighbours differ in a character or two, as in a real parts list. */
const numberings: ((running: number, maker: string) => string)[] = [
  (running, maker) =>
    `${maker}${digits(running / 1e6, 1)}-${digits(running / 1e4, 2)}${letters[running % 3]}-${digits(running, 4)}`,
  (running, maker) => `${digits(running / 1e4, 3)}${maker}.${digits(running, 4)}.${letters[running % 7]}`,
  (running, maker) => `${maker}N ${digits(running / 1e4, 3)}/${digits(running, 4)}`,
  (running, maker) =>
    `${digits(running / 10, 6)}${maker}${letters[(running * 5) % 24]}-${digits(running, 1)}`,
  (running, maker) => `${maker}EX-${digits(running, 6)}-${letters[(running * 5) % 24]}`,
  (running) => `${digits(running / 1e3, 4)} ${digits(running * 37, 4)} ${digits(running, 1)}`,
]

/** `count` entries: each has a part number of its own, a model number that it shares with a few, a maker, a position. */
export function inventedEntries(count: number, seed: number): InventedEntry[] {
  const random = seededRandom(seed)
  const running = makers.map(() => numberings.map(() => below(random, 1e7)))
  const entries: InventedEntry[] = []
  const taken = new Set<string>()
  while (entries.length < count) {
    const whose = below(random, makers.length)
    const [maker, initial] = makers[whose]!
    const style = below(random, numberings.length)
    if (random() < 0.02) running[whose]![style] = below(random, 1e7)
    const model = inventedModel(random, initial)
    for (let family = 1 + below(random, 4); family > 0 && entries.length < count; family--) {
      running[whose]![style]! += 1 + below(random, 3)
      const part = numberings[style]!(running[whose]![style]!, initial)
      if (taken.has(part)) continue
      taken.add(part)
      const older = random() < 0.25 ? [numberings[(style + 1) % 6]!(below(random, 1e7), initial)] : []
      const texts = [part, ...older, model, maker, positions[(family + whose) % positions.length]!]
      entries.push({ key: `switch-${digits(entries.length, 6)}`, texts })
    }
  }
  return entries
}

function inventedModel(random: Random, initial: string): string {
  const size = digits(40 + 10 * below(random, 10), 3)
  const open = pick(random, ['*', '*', '**', ''])
  const tail = `${digits(below(random, 1000), 3)}-${below(random, 6)}${pick(random, 'ABCD')}`
  return `${initial}${pick(random, letters)}${pick(random, letters)}${size}${open}${tail}`
}

const isCharacter = (character: string) => /[0-9A-Z]/i.test(character)

/** The places in a number that hold a letter or digit. */
const places = (number: string) =>
  [...number].flatMap((character, at) => (isCharacter(character) ? [at] : []))

export const slipKinds = ['wrong', 'missing', 'doubled', 'swapped'] as const
export type SlipKind = (typeof slipKinds)[number]

/** One slip of a kind at a random letter or digit of a number. */
export function slip(random: Random, number: string, kind: SlipKind): string {
  const spots = places(number)
  const which = below(random, spots.length)
  const at = spots[which]!
  const here = number[at]!
  const front = number.slice(0, at)
  const back = number.slice(at + 1)
  if (kind === 'missing') return front + back
  if (kind === 'doubled') return front + here + here + back
  if (kind === 'swapped') {
    const left = spots[Math.max(1, which) - 1]!
    const right = spots[Math.max(1, which)]!
    return (
      number.slice(0, left) +
      number[right] +
      number.slice(left + 1, right) +
      number[left] +
      number.slice(right + 1)
    )
  }
  const others = [...(/[0-9]/.test(here) ? '0123456789' : letters)].filter((other) => other !== here)
  return front + pick(random, others) + back
}

/** Dashes, blanks and dots left out, other case: what a thumb does. */
export function careless(random: Random, number: string): string {
  const bare = random() < 0.5 ? number.replace(/[^0-9A-Z*]/gi, '') : number
  return random() < 0.5 ? bare.toLowerCase() : bare
}

/** One or two slips, typed carelessly. */
export function misspell(random: Random, number: string): string {
  const once = slip(random, number, pick(random, slipKinds))
  return careless(random, random() < 0.5 ? once : slip(random, once, pick(random, slipKinds)))
}

/** From one to all of the characters that have a look-alike replaced by one; unchanged if there are none. */
export function confuse(random: Random, number: string): string {
  const sure = below(random, number.length)
  const share = 0.3 + 0.7 * random()
  let changed = ''
  for (let step = 0; step < number.length; step++) {
    const character = number[step]!.toUpperCase()
    const twin = twinsOf(character)
    changed += twin && (step === sure || random() < share) ? pick(random, twin) : number[step]
  }
  return careless(random, changed)
}

function twinsOf(character: string): string | undefined {
  if (!confusable.includes(character)) return undefined
  if ('1IL'.includes(character)) return '1IL'.replace(character, '')
  const pair = ['O0', 'S5', 'B8', 'Z2', 'G6'].find((both) => both.includes(character))
  return pair?.replace(character, '')
}

/** A whole model number that a pattern with wildcards stands for. */
export const concrete = (random: Random, pattern: string): string =>
  pattern.replace(/\*/g, () => (random() < 0.5 ? pick(random, letters) : String(below(random, 10))))
