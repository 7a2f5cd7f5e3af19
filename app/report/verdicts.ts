import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { FurnaceRating, RatingStanding, Slip } from '@/lib/core/rating'
import type { ReportBody } from '@/lib/records/kinds/report'
import { unsavedId } from './onceSaved'
import { looksTurnedRound, turnedRound } from './turnedRound'

/** What a number would mean beside what is on file, while the other side can still be asked. */
export type Verdict = {
  /** The number that it is said of; undefined where it is said of several. */
  action?: ReportBody['action']
  what: 'new' | 'agrees' | 'disputes' | 'sides' | 'weaker' | 'slip' | 'order' | 'lead'
  words: string
  /** What to ask back before hanging up. */
  askBack?: string
}

type Asked = {
  body: ReportBody
  /** What the same text states, this number included: what is out of order among these is said where they are typed. */
  together: readonly ReportBody[]
  /** Its place among the reports that are not saved yet. */
  index: number
  before: FurnaceRating
  /** The rating once they are all saved. */
  after: FurnaceRating
  /** The switch that this one is most easily taken for. */
  sister?: { name: string; rating: FurnaceRating }
  unit: PressureUnit
}

const keys = { closes: 'closes', opens: 'opens', 'not stated': 'unstated' } as const
const closeOrOpen = 'Is that where the switch closes, or where it opens?'

const askBackOf: Readonly<Record<Slip, string>> = {
  'ten times': 'Where is the decimal point? Read it to me digit by digit.',
  'a tenth': 'Where is the decimal point? Read it to me digit by digit.',
  'break taken for make': closeOrOpen,
  'make taken for break': closeOrOpen,
  'sister switch taken for this one': 'Which of the two switches is that, low fire or high fire?',
  'number read in another unit': 'Which unit is that: inches of water, pascals or millibar?',
}

/**
 * What to say of a number at once: whether it agrees, disputes, or looks like a slip; never whether to believe it. It
 * says of a number what the weighing makes of it, so that it can't contradict the level beside it.
 */
export function verdictsOn({ body, together, index, before, after, sister, unit }: Asked): Verdict[] {
  const key = keys[body.action]
  const then = after[key]
  if (then.level === 'Not on file') return []
  const found = placed(body, unsavedId(index), before[key], then, unit)
  const all = found.some(({ what }) => what === 'slip')
    ? found
    : [
        ...found,
        ...looksLikeAnother(body, before, sister, unit),
        ...outOfOrder(body, unsavedId(index), then, together),
      ]
  return all.map((verdict) => ({ ...verdict, action: body.action }))
}

/** Where the weighing puts the report: behind the value shown, behind a rival, or among the leads. */
function placed(
  body: ReportBody,
  id: string,
  was: RatingStanding,
  then: Extract<RatingStanding, { pascals: number }>,
  unit: PressureUnit,
): Verdict[] {
  const against = was.level === 'In dispute' && sidesWith(was, body) ? sides : disputing(was)
  const own = then.rivals.find(({ reportIds }) => reportIds.includes(id))
  if (own !== undefined)
    return [
      ...(own.slip === undefined ? [] : [slipping(`${say(body, unit)} looks like a slip`, own.slip)]),
      ...(own.disputes ? [against] : own.slip === undefined ? [weaker(then)] : []),
    ]
  if (!then.reportIds.includes(id))
    return [{ what: 'lead', words: 'It is listed as a lead, and changes nothing by itself.' }]
  const slip = then.rivals.find((rival) => rival.slip !== undefined)?.slip
  if (slip !== undefined) return [slipping('Either this or what is on file looks like a slip', slip)]
  if (then.level === 'In dispute') return [against]
  if (was.level === 'Not on file')
    return [{ what: 'new', words: `Nothing is on file for it yet. Would stand as: ${then.level}.` }]
  return [{ what: 'agrees', words: `Agrees with what is on file (${was.level} now, ${then.level} then).` }]
}

/** Whether a value of the dispute that is on file is this very number. */
const sidesWith = (was: RatingStanding, body: ReportBody): boolean =>
  [was, ...was.rivals].some(
    ({ pascals, limit }) =>
      pascals !== undefined && samePascals(pascals, body.pascals) && limit === body.limit,
  )

const sides: Verdict = {
  what: 'sides',
  words:
    'It is in dispute already, and this agrees with one side. A dispute is settled by a record of its own.',
}

const weaker = (then: RatingStanding): Verdict => ({
  what: 'weaker',
  words: `Another number is on file with better proof, and stays as ${then.level}. This one is listed beside it as reported as well.`,
})

/** The wrong way round beside what is on file, or beside another answer of the same call. */
function outOfOrder(
  body: ReportBody,
  id: string,
  then: RatingStanding,
  together: readonly ReportBody[],
): Verdict[] {
  if (!then.reportIds.includes(id)) return []
  return (then.outOfOrder ?? []).flatMap((disorder): Verdict[] => {
    if (disorder === 'low fire beyond high fire') return [stagesTurnedRound]
    return looksTurnedRound(together, body.kind) ? [] : [{ what: 'order', ...turnedRoundHere }]
  })
}

const turnedRoundHere = {
  words: `Once it is saved, ${turnedRound.words}`,
  askBack: closeOrOpen,
} as const

/** Two stages the wrong way round: of two answers of one call, or beside what is on file. */
export const stagesTurnedRound: Verdict = {
  what: 'order',
  words: 'High fire would stand below low fire: usually it is the other way round.',
  askBack: 'Which number is for low fire, and which for high fire?',
}

/** The very number that is on file for the other action, or for the other switch, and not for this one. */
function looksLikeAnother(
  body: ReportBody,
  before: FurnaceRating,
  sister: Asked['sister'],
  unit: PressureUnit,
): Verdict[] {
  if (body.action === 'not stated' || isSame(before[body.action], body)) return []
  const other = body.action === 'closes' ? 'opens' : 'closes'
  if (isSame(before[other], body))
    return [
      {
        what: 'slip',
        words: `${say(body, unit)} is on file as where it ${other} (${before[other].level}).`,
        askBack: closeOrOpen,
      },
    ]
  if (sister !== undefined && isSame(sister.rating[body.action], body))
    return [
      {
        what: 'slip',
        words: `${say(body, unit)} is on file for the other switch, ${sister.name} (${sister.rating[body.action].level}).`,
        askBack: `Is that this switch, or ${sister.name}?`,
      },
    ]
  return []
}

const isSame = (standing: RatingStanding, { pascals }: ReportBody): boolean =>
  standing.level !== 'Not on file' && samePascals(standing.pascals, pascals)

const samePascals = (one: number, other: number): boolean => Math.abs(one - other) < 1e-9 * Math.max(1, other)

const say = ({ pascals, decimals, unit: own }: ReportBody, unit: PressureUnit): string =>
  own === unit ? formatPressure(pascals, unit, decimals) : formatPressure(pascals, unit)

/** The number on file is not said here: it is on its card, with its sources, and would be heard into the next answer. */
const disputing = (was: RatingStanding): Verdict => ({
  what: 'disputes',
  words: `Disputes what is on file (${was.level} now). Nobody is advised to condemn a switch on it until that is settled.`,
  askBack: 'Which is it for this model and serial, and where is that printed?',
})

const slipping = (words: string, slip: Slip): Verdict => ({
  what: 'slip',
  words: `${words}: ${slip}.`,
  askBack: askBackOf[slip],
})

/** High fire below low fire on a suction pair is unusual: the two are most often swapped. Common practice. */
export function looksSwapped(low: ReportBody, high: ReportBody): boolean {
  return (
    low.action === high.action &&
    low.sense === 'suction' &&
    high.sense === 'suction' &&
    low.stage === 'low fire' &&
    high.stage === 'high fire' &&
    high.pascals < low.pascals
  )
}
