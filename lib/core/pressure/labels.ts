import type { LimitKind } from '../vocabulary'
import type { Token } from './token'
import type { StatedValue } from './values'

/** What a label says of one of its values. */
export type ValueLabel = {
  action?: 'closes' | 'opens'
  limit?: LimitKind
  /** Abbreviations beside it, as written. */
  undecoded: string[]
  /** Words that speak for more than one action or limit, or for something else. */
  actionUnclear: boolean
  limitUnclear: boolean
  /** Words and values stood in two rows and were paired by their order. */
  pairedByOrder: boolean
}

type Placed = { token: Token; index: number }

const placed = (tokens: readonly Token[], kinds: readonly Token['kind'][]): Placed[] =>
  tokens.flatMap((token, index) => (kinds.includes(token.kind) ? [{ token, index }] : []))

/** The one value in the statement (between slashes, commas, line ends) where a word stands. */
function inOneStatement(tokens: readonly Token[], values: readonly StatedValue[], index: number): number[] {
  const parts = (at: number) =>
    tokens[at]?.kind === 'break' && !values.some((value) => at >= value.from && at < value.to)
  let from = index
  while (from > 0 && !parts(from - 1)) from--
  let to = index
  while (to < tokens.length && !parts(to)) to++
  return values.flatMap((value, position) => (value.from >= from && value.to <= to ? [position] : []))
}

/**
 * Which value each word belongs to. With slashes or commas between the statements, the one in its own statement; else
 * all words stand before their values or all behind, as the first one does. As many words as values in a row before
 * or behind them are paired in order.
 */
function owners(
  tokens: readonly Token[],
  values: readonly StatedValue[],
  words: readonly Placed[],
): { owner: number; byOrder: boolean }[] {
  const [first] = values
  const last = values.at(-1)
  if (!first || !last) return words.map(() => ({ owner: -1, byOrder: false }))
  if (values.length === 1) return words.map(() => ({ owner: 0, byOrder: false }))
  const own = words.map((word) => inOneStatement(tokens, values, word.index))
  if (own.every((positions) => positions.length === 1))
    return own.map(([owner = -1]) => ({ owner, byOrder: false }))
  const allBefore = words.every((word) => word.index < first.from)
  const allBehind = words.every((word) => word.index >= last.to)
  if (words.length === values.length && (allBefore || allBehind))
    return words.map((_, owner) => ({ owner, byOrder: true }))
  const prefixed = (words[0]?.index ?? 0) < first.from
  return words.map(({ index }) => {
    const next = values.findIndex((value) => value.to > index)
    const before = values.findLastIndex((value) => value.from <= index)
    const owner = prefixed ? (next >= 0 ? next : before) : before >= 0 ? before : next
    return { owner, byOrder: false }
  })
}

/** Whether other words stand between an action and its value: "make: Acme" and "do not open cover" are no actions. */
function isBesideValue(tokens: readonly Token[], value: StatedValue, index: number): boolean {
  const [from, to] = index < value.from ? [index + 1, value.from] : [value.to, index]
  return !tokens.slice(from, to).some((token) => token.kind === 'word' || token.kind === 'code')
}

const distinct = <T>(list: readonly T[]): T[] => [...new Set(list)]

export type LabelledValue = StatedValue & { label: ValueLabel }

/** The values of a text, each with what the words of the text say of it. */
export function labelled(tokens: readonly Token[], values: readonly StatedValue[]): LabelledValue[] {
  const names = placed(tokens, ['action', 'undecoded'])
  const nameOwners = owners(tokens, values, names)
  const limits = placed(tokens, ['limit'])
  const limitOwners = owners(tokens, values, limits)
  return values.map((value, position) => {
    const mine = names.filter((_, index) => nameOwners[index]?.owner === position)
    const undecoded = mine.flatMap(({ token }) => (token.kind === 'undecoded' ? [token.text] : []))
    const actions = mine.flatMap(({ token, index }) =>
      token.kind === 'action' ? [{ action: token.action, beside: isBesideValue(tokens, value, index) }] : [],
    )
    const said = distinct(actions.filter(({ beside }) => beside).map(({ action }) => action))
    const saidLimits = distinct(
      limits.flatMap(({ token }, index) =>
        token.kind === 'limit' && limitOwners[index]?.owner === position ? [token.limit] : [],
      ),
    )
    const label: ValueLabel = {
      action: said.length === 1 ? said[0] : undefined,
      limit: saidLimits.length === 1 ? saidLimits[0] : undefined,
      undecoded,
      actionUnclear: actions.length > 0 && said.length !== 1,
      limitUnclear: saidLimits.length > 1,
      pairedByOrder: names.some(
        (_, index) => nameOwners[index]?.owner === position && nameOwners[index]?.byOrder,
      ),
    }
    return { ...value, label }
  })
}
