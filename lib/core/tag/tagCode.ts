import { plainSpelling } from '../find/plainSpelling'
import { failure, type Result, success } from '../result'

/**
 * The characters of a tag's code: digits and capitals of which no two look alike on a worn tag (no O beside 0, no I
 * or L beside 1, no S, B, Z, G). There are 29 of them, a prime, so that one check character catches every slip below.
 */
export const tagAlphabet = '0123456789ACDEFHJKMNPQRTUVWXY'

/** Eleven random characters and one that checks them: 29¹¹ codes, about 53 bits, so that two never meet. */
const randomCharacters = 11

/** Characters of a whole code. */
export const tagCodeLength = randomCharacters + 1

/**
 * The weighted sum of a code's characters, modulo 29. A whole code sums to 0. With weights 1 to 12, different and none
 * a multiple of the prime, one changed character or two neighbours that changed places never sum to 0 again (the
 * reasoning of ISO/IEC 7064's pure systems; the weights are our own).
 */
const weighedSum = (characters: string): number =>
  [...characters].reduce((sum, character, at) => sum + (at + 1) * tagAlphabet.indexOf(character), 0) %
  tagAlphabet.length

/**
 * Makes the code of a new tag. It says nothing of the furnace, the site or the team.
 * @param random whole numbers from 0 to below 29, eleven of them; from a source that nobody can foresee
 * @throws RangeError if there are not eleven such numbers
 * @example makeTagCode([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]) // '0123456789A' and its check character
 */
export function makeTagCode(random: readonly number[]): string {
  const fit = random.every((each) => Number.isInteger(each) && each >= 0 && each < tagAlphabet.length)
  if (random.length !== randomCharacters || !fit)
    throw new RangeError(`makeTagCode requires ${randomCharacters} whole numbers from 0 to 28`)
  const start = random.map((each) => tagAlphabet[each]).join('')
  const sum = weighedSum(start)
  const check = [...tagAlphabet].findIndex(
    (_, value) => (sum + tagCodeLength * value) % tagAlphabet.length === 0,
  )
  return `${start}${tagAlphabet[check]}`
}

/** Whether a text is a whole code, in its one spelling. */
export const isTagCode = (text: string): boolean =>
  text.length === tagCodeLength &&
  [...text].every((character) => tagAlphabet.includes(character)) &&
  weighedSum(text) === 0

/**
 * Reads a code as people type it off a tag: blanks, dashes and case don't matter, and look-alikes are taken for the
 * character that a code can have.
 *
 * Problem codes: 'not-a-tag' (other length or characters), 'tag-misread' (the check character doesn't agree).
 * @example readTagCode('o123-4567-89a2') // value '0123456789A2'
 */
export function readTagCode(typed: string): Result<string> {
  const code = plainSpelling(typed)
  if (code.length !== tagCodeLength || ![...code].every((character) => tagAlphabet.includes(character)))
    return failure(
      'not-a-tag',
      `A tag’s code has ${tagCodeLength} characters, in three groups of four. Read it off the tag again.`,
    )
  if (weighedSum(code) !== 0)
    return failure(
      'tag-misread',
      'A character of this code is misread or two changed places: its last character does not agree with the others. Read it off the tag again.',
    )
  return success(code)
}

/** A code as it is printed, in groups that can be read aloud. */
export const groupedTagCode = (code: string): string => code.replace(/.{4}(?=.)/g, '$&-')
