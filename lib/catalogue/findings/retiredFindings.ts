import type { Finding } from '@/lib/core/diagnosis'

/**
 * Findings that are no longer offered. A record keeps the id and the value it was made with for ever, so an id is
 * never given a second meaning and never just deleted: it moves here with its last name and values. Cases that name
 * it stay readable (readableFinding); the ranking leaves it out (observationsOnList). None has been retired yet.
 */
export const retiredFindings: Readonly<Record<string, Pick<Finding, 'values'> & { name: string }>> = {}
