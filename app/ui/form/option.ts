/** One of the answers a person can choose from. */
export type Option<Value extends string = string> = {
  value: Value
  words: string
  /** A second line, where there is room for one (Choice). */
  hint?: string
  disabled?: boolean
}
