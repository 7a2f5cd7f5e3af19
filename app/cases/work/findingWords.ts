import { readableFinding } from '@/lib/catalogue/findings/readableFinding'

/** A finding with its value, as a few words. A retired finding is still readable. */
export function findingWords(id: string, value: string): string {
  const name = readableFinding(id)?.name ?? id
  return value === 'seen' ? name : `${name}: ${value}`
}
