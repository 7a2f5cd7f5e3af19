import { type Finding, notChecked, type Observations } from '@/lib/core/diagnosis'
import { findingById, retiredFindings } from './index'

/** Name and values of a finding as a record names it, retired or not; undefined if it never was one. */
export function readableFinding(
  id: string,
  retired: Readonly<Record<string, Pick<Finding, 'values'> & { name: string }>> = retiredFindings,
): { name: string; values: readonly string[]; retired: boolean } | undefined {
  const entry = findingById(id)
  if (entry) return { name: entry.name, values: entry.values, retired: false }
  const old = Object.hasOwn(retired, id) ? retired[id] : undefined
  return old && { name: old.name, values: old.values, retired: true }
}

/**
 * The part of a case's observations that the catalogue of today can weigh: retired findings, and values that a
 * finding no longer has, are left out. rankCauses throws at them; a case on file must not.
 */
export function observationsOnList(observations: Observations): Observations {
  return Object.fromEntries(
    Object.entries(observations).filter(([id, value]) => {
      const values = findingById(id)?.values
      return values !== undefined && (value === notChecked || values.includes(value))
    }),
  )
}
