import { type FurnaceForRating, plainPartNumber } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import { codeWords, elevationWords } from './coverWords'
import { oneOfEachWay } from './disputes'
import { furnaceForRating } from './furnaceForRating'
import { ratingReportOf, reportsAt } from './ratingReports'

/** One way in which a position's rating can be asked for: what is known of the furnace, and the same in words. */
type Way = { furnace: FurnaceForRating; words: string }

/** Beyond so many ways that reports combine to, only those with one thing known are looked at. */
const mostCombined = 60

/** Every way in which a position's reports can hold or not: nothing known, furnaces on file, and what reports state. */
export function waysAt(file: TeamFile, position: Entry<PositionBody>): Way[] {
  const reports = reportsAt(file, position.id)
  const ofRange = counting(file.furnaces).filter(
    ({ body }) =>
      body.rangeId !== undefined && file.keptId(body.rangeId) === file.keptId(position.body.rangeId),
  )
  const onFile = oneOfEachWay(ofRange, reports).map((furnace) => ({
    furnace: furnaceForRating(furnace),
    words: furnace.body.siteLabel,
  }))
  return [
    { furnace: {}, words: 'a furnace of which nothing more is known' },
    ...onFile,
    ...statedWays(reports.map((report) => ratingReportOf(report, file))),
  ]
}

/** The furnaces that reports speak of, whether or not one is on file: where two of their ranges overlap, one begins. */
function statedWays(reports: readonly ReturnType<typeof ratingReportOf>[]): Way[] {
  const once = <Value extends string | number>(values: readonly (Value | undefined)[]) =>
    [...new Set(values)].flatMap((value) => value ?? [])
  const metres = once(reports.map(({ elevationBand: band }) => band?.fromMetres ?? band?.toMetres))
  const revisions = once(reports.map(({ revisionRange: range }) => range?.from ?? range?.to))
  const serials = once(reports.map(({ serialRange: range }) => range?.from ?? range?.to))
  const named = once(reports.map(({ partNumber }) => partNumber && plainPartNumber(partNumber)))
  const parts = named.length > 1 ? once(reports.map(({ partNumber }) => partNumber)) : []
  const known: Way[][] = [
    metres.map((at) => ({
      furnace: { elevationMetres: at },
      words: `elevation ${elevationWords({ fromMetres: at, toMetres: at }).split(' to ')[0]}`,
    })),
    revisions.map((revision) => ({
      furnace: { revision },
      words: codeWords('revision', { from: revision, to: revision }),
    })),
    serials.map((serial) => ({
      furnace: { serial },
      words: codeWords('serial', { from: serial, to: serial }),
    })),
    parts.map((partNumber) => ({ furnace: { partNumber }, words: `part number ${partNumber}` })),
  ].filter((ways) => ways.length > 0)
  const together = known.reduce((product, ways) => product * ways.length, 1)
  const alone = known.flat()
  return known.length < 2 || together > mostCombined ? alone : [...alone, ...known.reduce(combined)]
}

const combined = (some: readonly Way[], others: readonly Way[]): Way[] =>
  some.flatMap((one) =>
    others.map((other) => ({
      furnace: { ...one.furnace, ...other.furnace },
      words: `${one.words}, ${other.words}`,
    })),
  )
