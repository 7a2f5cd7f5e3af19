import type { ReliabilityCounts, ReliabilityKey } from '@/lib/core/rating'
import { byCall } from '@/lib/records/view/desk/answeredCalls'
import type { Lesson } from '@/lib/records/view/sourceTrust'

/** How each row of the start reliabilities is called. */
export const trustNames: Readonly<Record<ReliabilityKey, string>> = {
  'factory switch label, with photo': 'Rating label on the factory switch, with a photo',
  'factory switch label, without photo': 'Rating label on the factory switch, without a photo',
  'data plate': 'Data plate on the unit',
  'current literature': 'Maker’s literature, current',
  'older literature': 'Maker’s literature, older',
  'factory support, read back': 'Factory technical support, read back',
  'factory support, not read back': 'Factory technical support, not read back',
  'distributor, read back': 'Distributor, read back',
  'distributor, not read back': 'Distributor, not read back',
  'bench check': 'Bench check of a sound switch',
  'unknown switch label': 'Label on a switch of unknown origin',
  'parts listing': 'Parts listing',
  remembered: 'Hand-written or remembered',
  imported: 'Imported without proof',
}

/** Under so many settled disputes a source’s own record says next to nothing. Common practice, no published source. */
const fewLessons = 10

/**
 * How far a source is believed: the mean of its Beta counts, and the counts, which show a lesson that is too small to
 * move the mean. @example believed({ right: 97, wrong: 3 }) // '97.0 % (97 of 100)'
 */
export const believed = ({ right, wrong }: ReliabilityCounts): string =>
  `${((100 * right) / (right + wrong)).toFixed(1)} % (${right} of ${right + wrong})`

/** How many settled disputes spoke for a source and how many against it, and how little that is where it is little. */
export function lessonsWords(lessons: readonly Lesson[]): string {
  const held = lessons.filter((lesson) => lesson.held).length
  const count = `Settled for it: ${held}. Settled against it: ${lessons.length - held}.`
  return withSmallness(count, lessons.length, 'settled dispute')
}

/** The same of an organisation, call by call: a call held only if all of its numbers that were in dispute did. */
export function callsWords(lessons: readonly Lesson[]): string {
  const calls = byCall(lessons, ({ report }) => report)
  const held = calls.filter((call) => call.every((lesson) => lesson.held)).length
  const count = `Calls settled for: ${held}. Calls settled against: ${calls.length - held}.`
  return withSmallness(count, calls.length, 'call')
}

const withSmallness = (words: string, count: number, what: string): string =>
  count >= fewLessons
    ? words
    : count === 1
      ? `${words} One ${what} is a small number: it says little by itself.`
      : `${words} ${count} ${what}s are a small number: they say little by themselves.`
