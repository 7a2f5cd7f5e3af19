import type { Role } from './envelope'
import { recordKinds } from './registry'

export type Permission = { kind: string; mayAdd: readonly Role[]; maySee: readonly Role[] }

/**
 * Who may add and who may see what: one row a kind of record, in the order of the registry. Each kind's own file
 * is the only place where it is said; here it is read off. Nobody who is not signed in may do either.
 *
 * @example permissionTable().find((row) => row.kind === 'withholding')?.mayAdd   // ['manager']
 */
export const permissionTable = (): readonly Permission[] =>
  Object.values(recordKinds).map(({ kind, mayAdd, maySee }) => ({ kind, mayAdd, maySee }))
