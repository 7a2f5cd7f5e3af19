import { feetOf } from '@/lib/catalogue/units'
import type { CodeRange, ElevationBand } from '@/lib/core/vocabulary'

const height = (metres: number): string =>
  `${Math.round(feetOf(metres)).toLocaleString('en')} ft (${Math.round(metres).toLocaleString('en')} m)`

/** Says an elevation band in feet, the unit of the makers' tables, with metres beside it. */
export function elevationWords({ fromMetres, toMetres }: ElevationBand): string {
  if (fromMetres === undefined && toMetres === undefined) return 'any elevation'
  if (fromMetres === undefined) return `up to ${height(toMetres!)}`
  if (toMetres === undefined) return `from ${height(fromMetres)} up`
  return `${height(fromMetres)} to ${height(toMetres)}`
}

/** The elevations that a report says it covers. */
export const bandWords = ({ elevationBand }: { elevationBand?: ElevationBand }): string => {
  const words = elevationBand === undefined ? 'elevation not stated' : elevationWords(elevationBand)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

export function codeWords(what: string, { from, to }: CodeRange): string {
  if (from === undefined && to === undefined) return `any ${what}`
  if (from === undefined) return `${what} up to ${to}`
  if (to === undefined) return `${what} from ${from}`
  return from === to ? `${what} ${from}` : `${what} ${from} to ${to}`
}

/** Which furnaces a report says it covers. */
export function coverWords(report: {
  revisionRange?: CodeRange
  serialRange?: CodeRange
  elevationBand?: ElevationBand
}): string {
  const words = [
    report.elevationBand && elevationWords(report.elevationBand),
    report.revisionRange && codeWords('revision', report.revisionRange),
    report.serialRange && codeWords('serial', report.serialRange),
  ].filter((each) => each !== undefined)
  return words.length === 0 ? 'Which furnaces it covers is not stated' : words.join(', ')
}
