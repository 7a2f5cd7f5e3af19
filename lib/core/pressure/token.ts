import type { Sense } from '../vocabulary'
import type { WordMeaning } from './labelWords'
import type { PressureUnit } from './units'

export type NumberToken = {
  kind: 'number'
  value: number
  decimals: number
  /** Digits alone, without point, comma or fraction. */
  whole: boolean
}

export type SignToken = {
  kind: 'sign'
  sense: Sense
  doubled: boolean
  /** It may be a dash that parts words. */
  unclear: boolean
  /** It follows a letter without a space. */
  glued: boolean
}

export type Meaning =
  | WordMeaning
  | NumberToken
  | SignToken
  | { kind: 'unit'; unit: PressureUnit }
  | { kind: 'foreign unit' }
  | { kind: 'percent' }
  | { kind: 'plus or minus' }
  | { kind: 'code' }
  | { kind: 'unclear'; why: string }
  /** A slash, comma, bar or line end between statements. */
  | { kind: 'break' }

/** A piece of a text: as it stands in the plain text, and where. */
export type Placed<T> = T & { text: string; start: number }

/** A piece of a text and what it says. */
export type Token = Placed<Meaning>

export const isNumber = (token: Token | undefined): token is Placed<NumberToken> => token?.kind === 'number'

export const isSign = (token: Token | undefined): token is Placed<SignToken> => token?.kind === 'sign'
