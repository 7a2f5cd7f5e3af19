import { positionTemplates } from '@/lib/catalogue/positions'
import { plainSpelling } from '@/lib/core/find'
import type { SwitchKind } from '@/lib/core/vocabulary'
import type { OnFile } from './onFile'
import type { OldRow } from './readRow'

/**
 * Where a row's number belongs: maker, range and position, each on file under an id or to be added under a name. What
 * is not on file is never added unless the person said so.
 */
export type Place = { maker: Thing; range: Thing; position: Thing }
export type Thing = { id: string } | { add: string }

/** What the person said about names that are not on file, by their plain spelling. */
export type Answers = {
  makers: Readonly<Record<string, NameAnswer>>
  /** By maker and range, `${maker} ${range}`. */
  ranges: Readonly<Record<string, NameAnswer>>
  /** For all ranges alike: a switch of which kind it is, or which position is meant. */
  positions: Readonly<Record<string, PositionAnswer>>
}

export type NameAnswer = { use: string } | 'add' | 'leave out'
export type PositionAnswer = { kind: SwitchKind } | { as: string } | 'leave out'

export const noAnswers: Answers = { makers: {}, ranges: {}, positions: {} }

/** A name that is not on file, and what may be meant by it. */
export type Asked = {
  key: string
  /** As the first row that names it writes it. */
  name: string
  /** How many rows wait for the answer. */
  rows: number
  /** Ids, or for positions names, of what is on file and may be meant, best first. Looked for when it is asked. */
  near(): string[]
  /** Of a range: the maker, as it is called here or in the list. */
  maker?: string
}

export type Placed =
  | { place: Place }
  | { asked: 'maker' | 'range' | 'position'; key: string; name: string; near: () => string[]; maker?: string }
  | { leftOut: string }
  | { refused: string }

/** Keys of things to be added carry the keys of what they belong to. */
export const thingKey = (thing: Thing): string => ('id' in thing ? thing.id : `add ${thing.add}`)

/**
 * Finds the place of a row by what is on file and what the person has answered.
 *
 * @param position what rows that name no position are of; empty when nobody said so
 */
export function placeOf(row: OldRow, position: string, onFile: OnFile, answers: Answers): Placed {
  const { maker: makerName, range, model } = row.cells
  if (makerName === undefined)
    return { refused: 'The row names no maker, and a rating belongs to a maker’s furnace.' }
  const rangeName = range ?? model
  if (rangeName === undefined) return { refused: 'The row names neither a furnace range nor a model.' }
  const positionName = row.cells.position ?? position
  if (positionName === '')
    return {
      refused:
        'The row names no switch position. A rating belongs to one position and never to its sister; choose a position for such rows if all of them are of it.',
    }
  const maker = makerOf(makerName, onFile, answers)
  if (!('thing' in maker)) return maker
  const ofRange = rangeOf(maker.thing, makerName, range, model, onFile, answers)
  if (!('thing' in ofRange)) return ofRange
  const at = positionOf(ofRange.thing, positionName, onFile, answers)
  if (!('thing' in at)) return at
  return { place: { maker: maker.thing, range: ofRange.thing, position: at.thing } }
}

type Found = { thing: Thing } | Exclude<Placed, { place: Place }>

const several = (what: string, name: string): Found => ({
  refused: `There are several ${what} called “${name}” on file. Join them first, then import again.`,
})

function makerOf(name: string, onFile: OnFile, answers: Answers): Found {
  const [same, another] = onFile.makersNamed(name)
  if (another !== undefined) return several('makers', name)
  if (same !== undefined) return { thing: { id: same } }
  const key = plainSpelling(name)
  if (key === '') return { refused: `“${name}” is no name of a maker.` }
  return (
    answered(answers.makers[key], key, name) ?? {
      asked: 'maker',
      key,
      name,
      near: () => onFile.makersNear(name),
    }
  )
}

function answered(answer: NameAnswer | undefined, key: string, name: string): Found | undefined {
  if (answer === undefined) return undefined
  if (answer === 'leave out') return { leftOut: `You left “${name}” out.` }
  return { thing: answer === 'add' ? { add: key } : { id: answer.use } }
}

function rangeOf(
  maker: Thing,
  makerName: string,
  range: string | undefined,
  model: string | undefined,
  onFile: OnFile,
  answers: Answers,
): Found {
  const name = range ?? model ?? ''
  if ('id' in maker) {
    const byName: string[] = range === undefined ? [] : onFile.rangesNamed(maker.id, range)
    const fitting: string[] = model === undefined ? [] : onFile.rangesForModel(maker.id, model)
    const both = byName.length > 1 ? byName.filter((id) => fitting.includes(id)) : byName
    if (byName.length > 0 && fitting.length > 0 && !both.some((id) => fitting.includes(id)))
      return {
        refused: `Model “${model}” belongs to another range on file than “${range}”. Look at the row, or at the range’s models.`,
      }
    const ids = both.length > 0 ? both : byName.length > 0 ? byName : range === undefined ? fitting : []
    if (ids.length > 1)
      return {
        refused: `“${name}” fits ${ids.length} ranges on file. Name the range in the list, in a column of its own.`,
      }
    if (ids[0] !== undefined) return { thing: { id: ids[0] } }
  }
  const plain = plainSpelling(name)
  if (plain === '') return { refused: `“${name}” is no name of a range.` }
  const key = `${thingKey(maker)} ${plain}`
  return (
    answered(answers.ranges[key], key, name) ?? {
      asked: 'range',
      key,
      name,
      maker: makerName,
      near: () => ('id' in maker ? onFile.rangesNear(maker.id, name) : []),
    }
  )
}

function positionOf(range: Thing, name: string, onFile: OnFile, answers: Answers): Found {
  const key = plainSpelling(name)
  if (key === '') return { refused: `“${name}” is no name of a position.` }
  const on = (wanted: string): Found | undefined => {
    if (!('id' in range)) return undefined
    const [same, another] = onFile.positionsNamed(range.id, wanted)
    if (another !== undefined) return several('positions', wanted)
    return same === undefined ? undefined : { thing: { id: same } }
  }
  const there = on(name)
  if (there !== undefined) return there
  const answer = answers.positions[key]
  if (answer === 'leave out') return { leftOut: `You left “${name}” out.` }
  if (answer === undefined) return { asked: 'position', key, name, near: () => nearPositions(name) }
  if ('kind' in answer) return { thing: { add: `${thingKey(range)} ${key}` } }
  const meant = on(answer.as)
  if (meant !== undefined) return meant
  const asKey = plainSpelling(answer.as)
  const asAnswer = answers.positions[asKey]
  return typeof asAnswer === 'object' && 'kind' in asAnswer
    ? { thing: { add: `${thingKey(range)} ${asKey}` } }
    : { asked: 'position', key: asKey, name: answer.as, near: () => [] }
}

/** The usual positions whose name shares a word with what is written: “Low” is likely Low fire. */
function nearPositions(name: string): string[] {
  const words: readonly string[] = name.toLowerCase().match(/\p{L}+/gu) ?? []
  return positionTemplates
    .filter((template) => {
      const own = template.name.toLowerCase().match(/\p{L}+/gu) ?? []
      return plainSpelling(template.name) !== plainSpelling(name) && own.some((word) => words.includes(word))
    })
    .map((template) => template.name)
}

/** Gathers what must be asked before rows can be placed, each name once, those that most rows wait for first. */
export function gatherAsked(
  rows: Iterable<OldRow>,
  position: string,
  onFile: OnFile,
  answers: Answers,
): Record<'maker' | 'range' | 'position', Asked[]> {
  const asked = {
    maker: new Map<string, Asked>(),
    range: new Map<string, Asked>(),
    position: new Map<string, Asked>(),
  }
  const known = new Map<string, Placed>()
  for (const row of rows) {
    const key = placeKey(row, position)
    const placed = known.get(key) ?? placeOf(row, position, onFile, answers)
    known.set(key, placed)
    if (!('asked' in placed)) continue
    const group = asked[placed.asked]
    const one = group.get(placed.key)
    if (one !== undefined) one.rows += 1
    else {
      const { name, near, maker } = placed
      group.set(placed.key, {
        key: placed.key,
        name,
        rows: 1,
        near,
        ...(maker === undefined ? {} : { maker }),
      })
    }
  }
  const byRows = (group: Map<string, Asked>) =>
    [...group.values()].sort((one, other) => other.rows - one.rows)
  return { maker: byRows(asked.maker), range: byRows(asked.range), position: byRows(asked.position) }
}

/** Rows of one key have one place: it is worked out once for all of them. */
export const placeKey = ({ cells }: OldRow, position: string): string =>
  JSON.stringify([cells.maker, cells.range, cells.model, cells.position ?? position])
