import type { z } from 'zod'
import { fromPascals } from '@/lib/core/pressure'
import {
  dependsOnFurnace,
  type FurnaceForRating,
  plainPartNumber,
  type RatingStanding,
} from '@/lib/core/rating'
import { failure, type Result, success } from '@/lib/core/result'
import { sayDate } from '@/lib/core/sayDate'
import type { Action } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PartBody } from '@/lib/records/kinds/part'
import { coverWords } from '@/lib/records/view/coverWords'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingSettings, type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { sourceWords } from '@/lib/records/view/sourceWords'
import { behind, newestDate, reportsNamed, saidAtOf } from '@/lib/records/view/standingReports'
import type { SetpointAnswer, setpointQuery } from './setpointShapes'

type Asked = z.infer<typeof setpointQuery>
type Standing = SetpointAnswer['setpoints'][number]['standings'][number]
type NameOf = (id: string) => string

/** What stands above every answer, as on the screens. */
const caution =
  'The maker’s instructions, local codes and a licensed person’s judgement come first. No setpoint is a reason to bypass, adjust or swap a switch.'

/**
 * Answers a question for setpoints from the team file: the same standings as a setpoint card shows.
 *
 * @param nameOf people's names by their ids
 * @param now the time, ISO 8601
 */
export function answerSetpoint(
  file: TeamFile,
  asked: Asked,
  nameOf: NameOf,
  now: string,
): Result<SetpointAnswer> {
  const furnaceEntry = asked.furnace === undefined ? undefined : file.furnaces.get(file.keptId(asked.furnace))
  if (asked.furnace !== undefined && furnaceEntry === undefined) {
    return failure(
      'no-such-furnace',
      'No furnace with that id is on file. Look for it under /api/v1/furnaces.',
    )
  }
  const positions = positionsAsked(file, asked, furnaceEntry?.body.rangeId)
  if (!positions.ok) return positions
  const furnace: FurnaceForRating = {
    ...given(asked),
    ...(furnaceEntry === undefined ? {} : furnaceForRating(furnaceEntry)),
  }
  const settings = ratingSettings(file, now)
  return success({
    caution,
    setpoints: positions.value.flatMap((id) => {
      const setpoint = setpointOf(file, id, furnace, settings)
      return setpoint === undefined ? [] : [said(setpoint, asked, { file, nameOf })]
    }),
  })
}

function positionsAsked(file: TeamFile, asked: Asked, rangeId: string | undefined): Result<string[]> {
  if (asked.part !== undefined) return positionsOfPart(file, asked.part, asked.position)
  if (asked.position !== undefined) {
    const kept = file.keptId(asked.position)
    return file.positions.has(kept)
      ? success([kept])
      : failure('no-such-position', 'No switch position with that id is on file.')
  }
  if (asked.furnace === undefined) {
    return failure('nothing-asked', 'Say which switch: by part, by position, or by furnace.')
  }
  if (rangeId === undefined) {
    return failure(
      'no-range',
      'It is not on file which range this furnace belongs to. Ask by part number, or have the range recorded.',
    )
  }
  const range = file.keptId(rangeId)
  return success(
    counting(file.positions).flatMap(({ id, body }) => (file.keptId(body.rangeId) === range ? [id] : [])),
  )
}

function positionsOfPart(file: TeamFile, partNumber: string, position: string | undefined): Result<string[]> {
  const plain = plainPartNumber(partNumber)
  const parts = counting(file.parts).filter(({ body }) => plainPartNumber(body.partNumber) === plain)
  if (parts.some(isGeneralPurpose)) {
    return failure(
      'general-purpose',
      'This is an adjustable or general-purpose switch: no maker names it for a furnace, so it has no setpoint here. Order the factory part. It is already in? Have it recorded as found fitted.',
    )
  }
  const wanted = position === undefined ? undefined : file.keptId(position)
  const ids = [...new Set(parts.flatMap(({ body }) => body.positionIds.map(file.keptId)))].filter(
    (id) => wanted === undefined || id === wanted,
  )
  return ids.length > 0
    ? success(ids)
    : failure(
        'not-on-file',
        parts.length > 0
          ? 'The part is on file, but not for such a switch position. Have it recorded where the maker lists it.'
          : 'No such part is on file. Ask for its rating under “Ask for a rating” (/ask), with the model number and what is printed on the switch.',
      )
}

const isGeneralPurpose = ({ body }: Entry<PartBody>): boolean =>
  body.fieldAdjustable || body.class === 'general-purpose'

function given({ elevation, revision, serial, part }: Asked): FurnaceForRating {
  return {
    ...(elevation === undefined ? {} : { elevationMetres: Number(elevation) }),
    ...(revision === undefined ? {} : { revision }),
    ...(serial === undefined ? {} : { serial }),
    ...(part === undefined ? {} : { partNumber: part }),
  }
}

type Around = { file: TeamFile; nameOf: NameOf }

function said(setpoint: Setpoint, asked: Asked, around: Around): SetpointAnswer['setpoints'][number] {
  const { position, range, maker, rating, partLines, foundFitted } = setpoint
  const query = new URLSearchParams({ position: position.id })
  for (const name of ['furnace', 'elevation', 'revision', 'serial', 'part'] as const)
    if (asked[name] !== undefined) query.set(name, asked[name])
  const standing = (action: Action, key: 'closes' | 'opens' | 'unstated'): Standing =>
    dependsOnFurnace(rating, key)
      ? { action, needs: rating.asks, words: needsWords(rating.asks) }
      : saidStanding(action, rating[key], setpoint, query, around)
  return {
    position: position.id,
    name: position.body.name,
    range: range.body.name,
    ...(maker === undefined ? {} : { maker: maker.body.name }),
    parts: partLines.flatMap((line) =>
      line.map(({ part }, place) => {
        const next = line[place + 1]
        const { partNumber } = part.body
        return next === undefined ? { partNumber } : { partNumber, replacedBy: next.part.body.partNumber }
      }),
    ),
    standings: [standing('closes', 'closes'), standing('opens', 'opens'), standing('not stated', 'unstated')],
    asks: rating.asks,
    dangers: foundFitted.map(({ body }) => `Found fitted on ${sayDate(body.foundOn)}: ${body.what}`),
    address: `/setpoint?${query}`,
  }
}

const needsWords = (asks: readonly string[]): string =>
  `Needs the ${asks.join(' and the ')}. The number on file depends on it, so none is given. Look at the data plate, and ask again with it.`

function saidStanding(
  action: Action,
  standing: RatingStanding,
  { reports }: Setpoint,
  query: URLSearchParams,
  around: Around,
): Standing {
  const { reasons } = standing
  const sourcesOf = (ids: readonly string[]) =>
    reportsNamed(ids, reports).map((report) => sourceOf(report, around))
  if (standing.level === 'Not on file') {
    const words = 'No rating is on file for this. Ask for it; somebody at the phone desk will ring for it.'
    return { action, reasons, level: standing.level, ask: { words, address: `/ask?${query}` } }
  }
  const ids = behind(standing)
  return {
    action,
    reasons,
    level: standing.level,
    asOf: newestDate(ids, reports),
    value: statedValue(standing),
    sense: standing.sense,
    sources: sourcesOf(ids),
    otherValues: standing.rivals.map((rival) => ({
      value: statedValue(rival),
      sources: sourcesOf(rival.reportIds),
    })),
  }
}

type Report = NonNullable<ReturnType<Setpoint['reports']['get']>>

/** What lets somebody check a number. A field that a manager withheld says so in its place. */
function sourceOf(report: Report, { file, nameOf }: Around) {
  const { source, proof, saidBy, readBack, asWritten } = report.body
  return {
    source,
    words: sourceWords(report, file),
    ...(proof?.kind === 'document' ? { document: documentOf(proof) } : {}),
    ...(proof?.kind === 'call reference'
      ? { call: { organisation: proof.organisation, reference: proof.reference } }
      : {}),
    ...(saidBy === undefined ? {} : { saidBy }),
    ...(readBack === undefined ? {} : { readBack }),
    holdsFor: coverWords(report.body),
    saidOn: saidAtOf(report),
    asWritten,
    recordedBy: nameOf(report.by),
    report: report.id,
  }
}

const documentOf = ({ name, edition, page }: { name: string; edition?: string; page: string }) =>
  edition === undefined ? { name, page } : { name, edition, page }

type Stated = Pick<
  Extract<RatingStanding, { pascals: number }>,
  'pascals' | 'limit' | 'toleranceAbove' | 'toleranceBelow'
>

const statedValue = ({ pascals, limit, toleranceAbove, toleranceBelow }: Stated) => ({
  pascals,
  inchesOfWater: Number(fromPascals(pascals, 'inH2O').toFixed(3)),
  limit,
  ...(toleranceAbove === undefined ? {} : { toleranceAbovePascals: toleranceAbove }),
  ...(toleranceBelow === undefined ? {} : { toleranceBelowPascals: toleranceBelow }),
})
