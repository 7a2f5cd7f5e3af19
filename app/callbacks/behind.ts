import type { CaseShare } from '@/lib/records/view/callbacks/caseShare'

/** The cases behind a figure, in the groups that it is made of. */
export type Behind = {
  /** Names the figure in the address. */
  key: string
  title: string
  /** Worked out for the figure that is opened; of all the others nobody asks. */
  groups(): readonly { words: string; ids: readonly string[] }[]
}

/** The cases behind so many of so many. */
export const behindShare = (
  key: string,
  title: string,
  { countedIds, otherIds }: CaseShare,
  [counted, others]: readonly [string, string] = ['Came back', 'Did not come back'],
): Behind => ({
  key,
  title,
  groups: () => [
    { words: counted, ids: countedIds },
    { words: others, ids: otherIds },
  ],
})

/** What the figures of a section need to open their cases. */
export type Opening = {
  /** The key of the figure that is open. */
  open: string
  /** The address with a figure open, or closed again. */
  hrefOf(key: string): string
  onOpen(key: string): void
}
