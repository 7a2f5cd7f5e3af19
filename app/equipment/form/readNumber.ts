import { failure, type Result, success } from '@/lib/core/result'

/** A comma with three digits behind each, and no zero in front: 4,800 and 1,250,000, but not 0,001. */
const thousands = /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/
const plain = /^\d+(\.\d*)?$|^\.\d+$/

/**
 * A number of zero or more as people type it: `4800`, `4,800`, `.5`, `7,5`. A comma is a decimal comma unless it
 * parts thousands.
 * @param what names the number in the problem, for instance `the elevation in feet`
 * @param example a number that would do
 * @returns the number, or a problem with the code 'number-unclear'
 * @example readNumber('4,800', 'the elevation', '4800') // 4800
 */
export function readNumber(text: string, what: string, example: string): Result<number> {
  const typed = text.replaceAll(/\s/g, '')
  const digits = thousands.test(typed) ? typed.replaceAll(',', '') : typed.replace(',', '.')
  return plain.test(digits)
    ? success(Number(digits))
    : failure('number-unclear', `Type ${what} as a number, for instance ${example}.`)
}
