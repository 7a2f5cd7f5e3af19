/** Between which heights above the sea a furnace can stand, in metres. */
export const heights = { lowest: -500, highest: 9_000 } as const
