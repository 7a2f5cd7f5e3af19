import { type FindIndex, find } from '@/lib/core/find'

/**
 * `find` gives less to a text that holds what is typed, or is off from it by three slips in nine characters, by one
 * in four. Common practice, no published source: asking once too often costs a tap, once too seldom splits a file.
 */
const nearBelow = 0.5
/** With fewer letters and digits than these every name is near. */
const fewest = 3
/** How many are worth asking about. */
const asked = 3

/**
 * The ids of the records whose name may be meant by what is typed: it holds it, or is off by a few slips. Those
 * that read the same are among them. Best first.
 *
 *   nearNames(namesOf([{ id: 'a', text: 'Orrinmoor' }]), 'Orinmore')  // ['a']
 */
export const nearNames = (names: FindIndex, typed: string): string[] =>
  typed.replaceAll(/[^\p{L}\p{N}]/gu, '').length < fewest
    ? []
    : find(names, typed, asked)
        .filter(({ score }) => score < nearBelow)
        .map(({ key }) => key)
