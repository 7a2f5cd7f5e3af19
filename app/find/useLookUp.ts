'use client'

import { useMemo } from 'react'
import { buildFindIndex, type FindIndex } from '@/lib/core/find'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { type FindEntry, findEntries } from '@/lib/records/view/findEntries'

/** What Find looks into: the index over the team file, and what each of its keys stands for. */
export type LookUp = { index: FindIndex; entryOf: ReadonlyMap<string, FindEntry> }

/**
 * The index is made once it is wanted, and not before the field can be typed into: with 20,000 switches on file a phone
 * needs a good part of a second for it.
 *
 * @returns undefined until it is wanted
 */
export function useLookUp(file: TeamFile, wanted: boolean): LookUp | undefined {
  return useMemo(() => {
    if (!wanted) return undefined
    const entries = findEntries(file)
    return { index: buildFindIndex(entries), entryOf: new Map(entries.map((entry) => [entry.key, entry])) }
  }, [file, wanted])
}

/** Whether the team has recorded nothing yet that could be looked for. */
export const hasNothingToFind = ({ positions, furnaces, parts }: TeamFile): boolean =>
  [positions, furnaces, parts].every((entries) => counting<unknown>(entries).length === 0)
