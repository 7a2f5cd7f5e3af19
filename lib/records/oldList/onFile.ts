import { buildFindIndex, type FindIndex, find, plainSpelling } from '@/lib/core/find'
import { plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { EquipmentRangeBody } from '../kinds/equipmentRange'
import { groupedBy } from '../view/grouped'

/** What is on file under which name, gathered once for a whole list. */
export type OnFile = {
  /** Makers by their names, case, dashes, blanks and look-alikes apart. */
  makersNamed(name: string): string[]
  /** Makers whose name may be meant, best first. */
  makersNear(name: string): string[]
  rangesNamed(makerId: string, name: string): string[]
  rangesNear(makerId: string, name: string): string[]
  /** Ranges of a maker one of whose model numbers or patterns stands for a model. */
  rangesForModel(makerId: string, model: string): string[]
  positionsOf(rangeId: string): readonly { id: string; name: string }[]
  positionsNamed(rangeId: string, name: string): string[]
  /** The first part number in a text that is on file as one of a general-purpose or adjustable switch. */
  genericIn(text: string): string | undefined
}

/** `find` gives less to what is off by a few slips. Common practice, no published source. */
const nearBelow = 0.5
const offered = 3

type Named = { id: string; name: string }

export function whatIsOnFile(file: TeamFile): OnFile {
  const makers = named(counting(file.makers).map(({ id, body }) => ({ id, name: body.name })))
  const rangesBy = groupedBy(counting(file.ranges), ({ body }) => file.keptId(body.makerId))
  const ranges = lazily((makerId: string) => {
    const own = rangesBy.get(makerId) ?? []
    return { names: named(own.map(({ id, body }) => ({ id, name: body.name }))), models: models(own) }
  })
  const positionsBy = groupedBy(counting(file.positions), ({ body }) => file.keptId(body.rangeId))
  const positions = lazily((rangeId: string) =>
    named((positionsBy.get(rangeId) ?? []).map(({ id, body }) => ({ id, name: body.name }))),
  )
  const generic = counting(file.parts)
    .filter(({ body }) => body.fieldAdjustable || body.class === 'general-purpose')
    .map(({ body }) => body.partNumber)
  return {
    makersNamed: makers.same,
    makersNear: makers.near,
    rangesNamed: (makerId, name) => ranges(makerId).names.same(name),
    rangesNear: (makerId, name) => ranges(makerId).names.near(name),
    rangesForModel: (makerId, model) => ranges(makerId).models(model),
    positionsOf: (rangeId) => positions(rangeId).all,
    positionsNamed: (rangeId, name) => positions(rangeId).same(name),
    genericIn: numbersIn(generic),
  }
}

function named(all: readonly Named[]) {
  const byPlain = groupedBy(all, ({ name }) => plainSpelling(name))
  let index: FindIndex | undefined
  return {
    all,
    same: (name: string): string[] => (byPlain.get(plainSpelling(name)) ?? []).map(({ id }) => id),
    near(name: string): string[] {
      index ??= buildFindIndex(all.map(({ id, name: text }) => ({ key: id, texts: [text] })))
      return find(index, name, offered)
        .filter(({ score }) => score < nearBelow)
        .map(({ key }) => key)
    },
  }
}

/**
 * Looks for part numbers in texts: each is a run of whole words, whatever stands around and between them, since people
 * leave out dashes and blanks, and put in others.
 * @example numbersIn(['UNI-22'])('P/N uni 22 (old)') // 'uni 22'
 */
function numbersIn(partNumbers: readonly string[]): (text: string) => string | undefined {
  const numbers = new Set(partNumbers.map(plainPartNumber).filter((number) => number !== ''))
  if (numbers.size === 0) return () => undefined
  const beginnings = new Set(
    [...numbers].flatMap((number) =>
      Array.from({ length: number.length }, (_, at) => number.slice(0, at + 1)),
    ),
  )
  const firstSigns = new Set(Array.from(numbers, (number) => number[0]))
  const mayBegin = new RegExp(`(?<![a-z0-9])[${[...firstSigns].join('')}]`, 'i')
  return (text) => {
    const isAscii = !/[^\x20-\x7e]/.test(text)
    // Most cells of a long list end here.
    if (isAscii && !mayBegin.test(text)) return undefined
    const written = isAscii ? text : text.normalize('NFKC')
    const words = [...written.matchAll(/[\p{L}\p{N}]+/gu)]
    for (const [from, first] of words.entries()) {
      let run = ''
      for (const word of words.slice(from)) {
        run += word[0].toUpperCase()
        if (numbers.has(run)) return written.slice(first.index, word.index + word[0].length)
        if (!beginnings.has(run)) break
      }
    }
    return undefined
  }
}

function models(ranges: readonly Entry<EquipmentRangeBody>[]): (model: string) => string[] {
  const plain = groupedBy(
    ranges.flatMap(({ id, body }) => body.modelPatterns.map((pattern) => ({ id, pattern }))),
    ({ pattern }) => (/[*?]/.test(pattern) ? '' : plainSpelling(pattern)),
  )
  const patterns = (plain.get('') ?? []).map(({ id, pattern }) => ({ id, fits: patternOf(pattern) }))
  return (model) => {
    const wanted = plainSpelling(model)
    const exact = wanted === '' ? [] : (plain.get(wanted) ?? []).map(({ id }) => id)
    const fitting = patterns.filter(({ fits }) => fits.test(wanted)).map(({ id }) => id)
    return [...new Set(exact.length > 0 ? exact : fitting)]
  }
}

/** An asterisk stands for any characters, a question mark for one; all else as `plainSpelling` has it. */
const patternOf = (pattern: string): RegExp =>
  new RegExp(
    `^${pattern
      .split(/([*?])/)
      .map((part) => (part === '*' ? '.*' : part === '?' ? '.' : plainSpelling(part)))
      .join('')}$`,
  )

function lazily<Value>(make: (key: string) => Value): (key: string) => Value {
  const made = new Map<string, Value>()
  return (key) => {
    const kept = made.get(key) ?? make(key)
    made.set(key, kept)
    return kept
  }
}
