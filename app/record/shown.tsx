import type { ReactNode } from 'react'
import { formatPressure, fromPascals, type PressureUnit, usualDecimals } from '@/lib/core/pressure'
import type { CodeRange, ElevationBand } from '@/lib/core/vocabulary'
import { codeWords, elevationWords } from '@/lib/records/view/coverWords'
import { heightWords } from '../furnace/heightWords'
import { AsPrinted } from '../ui/words/AsPrinted'
import { otherUnit } from '../ui/words/pressureWords'
import { Quiet } from '../ui/words/Quiet'
import { sayDate, sayMoment } from '../ui/words/sayDate'

/** What a value is shown with: the reader's unit, people's names, and what other records are called. */
export type About = {
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  /** Where another record is read, and what it is called; undefined when it is not on this device. */
  recordAt(id: string): { href: string; words: string } | undefined
  /** Of which kind another record is. */
  kindOf(id: string): string | undefined
}

/** Shows one value of a field. Lists are shown value by value. */
export type Show = (value: unknown, about: About) => ReactNode

/** How far rounding may change a pressure that is shown: half a per cent, so that no digit that was typed is lost. */
const mostRounding = 0.005

/** As many decimals as it takes for a pressure to be shown as what it is: the usual ones, and up to four more. */
function decimalsFor(pascals: number, unit: PressureUnit): number {
  const usual = usualDecimals[unit]
  const value = Math.abs(fromPascals(pascals, unit))
  const enough = [0, 1, 2, 3].find(
    (more) => Math.abs(Number(value.toFixed(usual + more)) - value) <= mostRounding * value,
  )
  return usual + (enough ?? 4)
}

/** A pressure in pascals, in the reader's unit with the other one small beside it. */
export const pressure: Show = (value, { unit }) => {
  if (typeof value !== 'number') return plain(value)
  const words = (each: PressureUnit) => formatPressure(value, each, decimalsFor(value, each))
  return (
    <>
      {words(unit)} <Quiet inline>{words(otherUnit(unit))}</Quiet>
    </>
  )
}

const plain = (value: unknown): string => String(value)

/** An elevation or a length in metres, in feet with metres beside it. */
export const height: Show = (value) => (typeof value === 'number' ? heightWords(value) : plain(value))

/** Another record, by its name. */
export const record: Show = (value, { recordAt }) => {
  const found = recordAt(plain(value))
  return found === undefined ? 'A record that is not on this device' : <a href={found.href}>{found.words}</a>
}

export const person: Show = (value, { names }) =>
  names.get(plain(value)) ?? 'Somebody whose name is not on this device'

export const day: Show = (value) => sayDate(plain(value))
export const moment: Show = (value) => sayMoment(plain(value))
export const printed: Show = (value) => <AsPrinted text={plain(value)} />

export const figure =
  (unit: string): Show =>
  (value) =>
    `${plain(value)} ${unit}`

/** One word of a list, in the words of the screens. */
export const oneOf =
  (words: Readonly<Record<string, string>>): Show =>
  (value) =>
    words[plain(value)] ?? plain(value)

export const revisions: Show = (value) => codeWords('revision', value as CodeRange)
export const serials: Show = (value) => codeWords('serial', value as CodeRange)
export const elevations: Show = (value) => elevationWords(value as ElevationBand)
