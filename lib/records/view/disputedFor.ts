import { type FurnaceForRating, plainPartNumber, type RatingSettings } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import { codeWords, elevationWords } from './coverWords'
import { differ, oneOfEachWay } from './disputes'
import { furnaceForRating } from './furnaceForRating'
import { ratingReportOf, reportsAt } from './ratingReports'
import { ratingAt } from './setpoint'

/** One way in which a position's rating can be asked for: what is known of the furnace, and the same in words. */
type Way = { furnace: FurnaceForRating; words: string }

type Answer = 'closes' | 'opens' | 'unstated'

/** Beyond so many ways that reports combine to, only those with one thing known are looked at. */
const mostCombined = 60

/**
 * For what a position's ratings are in dispute: furnaces on file, one for each way in which its reports can cover one,
 * and every elevation, revision, serial and part number at which a report begins to hold, together and each alone.
 *
 * @returns for each answer in words, each once; none where nothing is in dispute
 * @example disputedFor(file, position, settings).closes // ['elevation 4,501 ft (1,372 m)']
 */
export function disputedFor(
  file: TeamFile,
  position: Entry<PositionBody>,
  settings: RatingSettings,
): Readonly<Record<Answer, string[]>> {
  const found: Record<Answer, Set<string>> = { closes: new Set(), opens: new Set(), unstated: new Set() }
  if (differ(reportsAt(file, position.id)))
    for (const { furnace, words } of waysAt(file, position)) {
      const rating = ratingAt(file, position, furnace, settings)
      for (const answer of ['closes', 'opens', 'unstated'] as const)
        if (rating[answer].level === 'In dispute') found[answer].add(words)
    }
  return { closes: [...found.closes], opens: [...found.opens], unstated: [...found.unstated] }
}

function waysAt(file: TeamFile, position: Entry<PositionBody>): Way[] {
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
