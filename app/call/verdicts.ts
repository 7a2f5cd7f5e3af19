import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { FurnaceRating, RatingStanding, Slip } from '@/lib/core/rating'
import type { ReportBody } from '@/lib/records/kinds/report'
import { unsavedId } from '../report/WhatItChanges'

/** What a number would mean beside what is on file, while the other side can still be asked. */
export type Verdict = {
  what: 'new' | 'agrees' | 'disputes' | 'slip' | 'lead'
  words: string
  /** What to ask back before hanging up. */
  askBack?: string
}

type Asked = {
  body: ReportBody
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

/** What to say of a number at once: whether it agrees, disputes, or looks like a slip; never whether to believe it. */
export function verdictsOn({ body, index, before, after, sister, unit }: Asked): Verdict[] {
  const key = keys[body.action]
  const then = after[key]
  const was = before[key]
  const id = unsavedId(index)
  const own = then.rivals.find(({ reportIds }) => reportIds.includes(id))
  const found: Verdict[] = []
  if (then.level === 'Not on file') return []
  if (own !== undefined) {
    found.push(
      own.slip === undefined ? disputing(was) : slipping(`${say(body, unit)} looks like a slip`, own.slip),
    )
  } else if (then.reportIds.includes(id)) {
    const slipped = then.rivals.find(({ slip }) => slip !== undefined)
    if (slipped?.slip !== undefined)
      found.push(slipping('Either this or what is on file looks like a slip', slipped.slip))
    else if (then.rivals.some(({ disputes }) => disputes)) found.push(disputing(was))
    else if (was.level === 'Not on file')
      found.push({ what: 'new', words: `Nothing is on file for it yet. Would stand as: ${then.level}.` })
    else
      found.push({
        what: 'agrees',
        words: `Agrees with what is on file (${was.level} now, ${then.level} then).`,
      })
  } else found.push({ what: 'lead', words: 'It is listed as a lead, and changes nothing by itself.' })
  if (!found.some(({ what }) => what === 'slip')) found.push(...looksLikeAnother(body, before, sister, unit))
  return found
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
  standing.level !== 'Not on file' && Math.abs(standing.pascals - pascals) < 1e-9 * Math.max(1, pascals)

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
