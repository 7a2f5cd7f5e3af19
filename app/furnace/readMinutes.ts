import { failure, type Result, success } from '@/lib/core/result'
import { readNumber } from '../equipment/form/readNumber'

/**
 * Minutes of work as people type them: a whole number, or nothing while nobody knows.
 * @returns undefined for an empty text; a problem with the code 'number-unclear' for anything but a whole number
 * @example readMinutes('40') // 40
 */
export function readMinutes(text: string): Result<number | undefined> {
  if (text.trim() === '') return success(undefined)
  const read = readNumber(text, 'the minutes', '40')
  return read.ok && !Number.isInteger(read.value)
    ? failure('number-unclear', 'Type the minutes as a whole number, for instance 40.')
    : read
}
