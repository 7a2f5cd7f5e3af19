import { causeById } from '@/lib/catalogue/causes'
import { readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { unlistedCause } from '@/lib/core/diagnosis'
import type { Refusal } from './envelope'

/**
 * Why the catalogue knows no such finding, or no such value of it. A retired finding is still taken in: a device
 * that has been away knows no better.
 */
export function whyNoSuchFinding(id: string, value: string): Refusal | undefined {
  const finding = readableFinding(id)
  if (finding === undefined)
    return {
      rule: 'a finding of the catalogue',
      sentence: `There is no finding called “${id}”. Choose one from the list, or write it as a note.`,
    }
  return finding.values.includes(value)
    ? undefined
    : {
        rule: 'a finding of the catalogue',
        sentence: `“${finding.name}” has no value “${value}”. Choose one of: ${finding.values.join(', ')}.`,
      }
}

/** Why the catalogue knows no such cause. That it is not on the list may always be said. */
export function whyNoSuchCause(id: string): Refusal | undefined {
  return id === unlistedCause || causeById(id) !== undefined
    ? undefined
    : {
        rule: 'a cause of the catalogue',
        sentence: `There is no cause called “${id}”. Choose one from the list, or say that it is not on the list and describe it in the note.`,
      }
}
