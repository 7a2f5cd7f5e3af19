import { buildFindIndex, type FindIndex, find } from '@/lib/core/find'

/** `find` gives less to a text that is the very number typed, dashes, blanks, case and look-alikes apart. */
const sameBelow = 0.02
const looked = 12

/** Texts by the id of the record that they name, made ready for `readsTheSame`. */
export const namesOf = (named: readonly { id: string; text: string }[]): FindIndex =>
  buildFindIndex(named.map(({ id, text }) => ({ key: id, texts: [text] })))

/**
 * The ids of the records whose text reads the same as what is typed, once dashes, blanks, case and look-alikes are
 * folded. An empty text is the same as none.
 *
 *   readsTheSame(namesOf([{ id: 'a', text: 'OM-7731' }]), 'om 773I')  // ['a']
 */
export const readsTheSame = (names: FindIndex, typed: string): string[] =>
  find(names, typed, looked)
    .filter(({ score }) => score < sameBelow)
    .map(({ key }) => key)
