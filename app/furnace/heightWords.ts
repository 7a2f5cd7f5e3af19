import { feetOf } from '@/lib/catalogue/units'

const whole = (figure: number): string => Math.round(figure).toLocaleString('en')

/**
 * A height or a length in feet, the unit of the makers' tables, with metres beside it.
 * @param metres any finite number
 * @example heightWords(1463.04) // '4,800 ft (1,463 m)'
 */
export const heightWords = (metres: number): string => `${whole(feetOf(metres))} ft (${whole(metres)} m)`
