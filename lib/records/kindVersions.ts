/**
 * Every version in which each kind of record was ever written, the newest last. Folding a log needs no more of a kind,
 * so the first screen need not load schemas and rules (`registry`, which a test holds this against).
 */
export const kindVersions: ReadonlyMap<string, readonly number[]> = new Map([
  ['maker', [1]],
  ['equipment range', [1]],
  ['position', [1]],
  ['part', [1]],
  ['supersession', [1]],
  ['furnace', [1]],
  ['gauge', [1]],
  ['report', [1]],
  ['settlement', [1]],
  ['withdrawal', [1]],
  ['withholding', [1]],
  ['same as', [1]],
  ['rating request', [1, 2]],
  ['found fitted', [1]],
  ['repair', [1, 2, 3]],
  ['preference', [1]],
  ['case', [1]],
  ['visit', [1]],
  ['finding', [1]],
  ['reading', [1]],
  ['baseline', [1]],
  ['combustion test', [1]],
  ['ending', [1]],
  ['shut-down notice', [1]],
  ['lifting', [1]],
  ['danger answer', [1]],
  ['fitted part', [1]],
  ['switch check', [1]],
  ['asks too', [1, 2]],
  ['promise', [1]],
  ['organisation', [1]],
  ['call attempt', [1]],
  ['answer seen', [1]],
  ['tag', [1]],
  ['photo', [1]],
  ['import', [1]],
  ['imported lines', [1]],
  ['warranty answer', [1]],
])

/** The version of a kind that this program writes; undefined when it is no kind. */
export const versionOf = (kind: string): number | undefined => kindVersions.get(kind)?.at(-1)

/** Whether this program can read a record. */
export const isKnown = ({ kind, version }: { kind: string; version: number }): boolean =>
  kindVersions.get(kind)?.includes(version) ?? false
