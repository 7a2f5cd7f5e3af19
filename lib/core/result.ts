/**
 * Expected trouble as a value: what a person typed wrongly, or a lawful question that has no answer.
 * A caller's mistake is not a Result; it throws a RangeError.
 */
export type Problem = {
  /** Stable, machine-readable, kebab-case. */
  code: string
  /** A sentence for the person who must act: what, why, and what to do. */
  message: string
}

export type Result<T> = { ok: true; value: T } | { ok: false; problem: Problem }

export const success = <T>(value: T): Result<T> => ({ ok: true, value })

export const failure = (code: string, message: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, message },
})
