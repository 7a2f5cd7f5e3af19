/** One of the answers a person can choose from. */
export type Option<Value extends string = string> = {
  value: Value
  words: string
  /** A second line, where there is room for one (Choice). */
  hint?: string
  disabled?: boolean
}

/** Options from a list of words of the trade and how each is said. */
export const asOptions = <Value extends string>(
  values: readonly Value[],
  words: Readonly<Record<Value, string>>,
): Option<Value>[] => values.map((value) => ({ value, words: words[value] }))
