import { foldLookAlikes } from './lookAlikes'
import { fold } from './normalise'

/**
 * A text letter for letter, but for what people see or write in several ways: case, dashes, blanks and accents, and
 * the look-alikes 0/O, 1/I/L, 5/S, 8/B, 2/Z, 6/G. Two texts of one plain spelling are taken for the same number;
 * nothing nearer or further is.
 *
 * @example plainSpelling('lf2-o80 b') === plainSpelling('LF2-080-8')   // true
 */
export const plainSpelling = (text: string): string => foldLookAlikes(fold(text))
