import type { Comparison } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { CaseFile } from './caseFile'
import { airFreeOf, isSteady } from './dangers'
import type { EndingFacts } from './endingNeeds'
import { inServiceSituations } from './expectedAt'
import type { JudgedReading } from './judgedReading'
import { unless } from './unless'

/** Something measured in a visit. */
type Measured = Entry<{ visitId?: string }>

/**
 * Whether a repair was made after something was measured: it says nothing of the furnace as it is now. What was
 * measured on an earlier visit than a repair never counts. A repair that is written down only after the measurements
 * of its own visit is no second one.
 */
function isOutdated(measured: Measured, { repairs, visits }: CaseFile): boolean {
  const placeOf = ({ body }: Measured): number => visits.findIndex(({ entry }) => entry.id === body.visitId)
  const place = placeOf(measured)
  const isSecond = repairs.some(({ at }) => at < measured.at)
  return repairs.some((repair) => {
    if (place >= 0 && placeOf(repair) > place) return true
    return repair.at > measured.at && (isSecond || repair.body.visitId !== measured.body.visitId)
  })
}

/**
 * Whether something measured is superseded by what was read in service since. In one visit readings go to and fro
 * between the stages; but what an earlier visit proved, any later reading has to be held against anew.
 */
const isReadSince = (measured: Measured, visitId: string, since: readonly JudgedReading[]): boolean =>
  measured.body.visitId !== visitId && since.some(({ entry }) => entry.at > measured.at)

const inService = ({ entry }: JudgedReading): boolean =>
  inServiceSituations.includes(entry.body.situation) && entry.body.phase !== 'rest'

/**
 * What is lacking until every stage was read hot after the repair, at the points of its rating, enough and not thin.
 * The newest hot reading in service has to be the proof, whatever it was called.
 * @param visitId of the visit that is ended
 */
export function hotReadingNeeds(visitId: string, { file, judged, toProve }: EndingFacts): string[] {
  return toProve.flatMap((position) => {
    const there = judged.filter((one) => one.positionId === position.id && inService(one))
    const newest = there.findLast(({ entry }) => entry.body.phase === 'steady hot')
    const name = position.body.name
    if (newest === undefined || (newest.entry.body.when === 'as found' && !hasProof(there)))
      return [`${name}: a hot reading after the repair, as in service.`]
    if (newest.entry.body.when === 'as found')
      return [`${name}: it was read hot as found since. Read it again, after the repair.`]
    if (isOutdated(newest.entry, file))
      return [`${name}: its hot reading is from before the last repair. Read again.`]
    if (isReadSince(newest.entry, visitId, there))
      return [`${name}: its hot reading is of an earlier visit, and it was read since. Read it hot again.`]
    if (!newest.comparison.ok)
      return [`${name}: its hot reading proves nothing. ${newest.comparison.problem.message}`]
    const why = whyNoProof(newest.entry.body, newest.comparison.value)
    return why === undefined ? [] : [`${name}: ${why}`]
  })
}

const hasProof = (readings: readonly JudgedReading[]): boolean =>
  readings.some(({ entry }) => entry.body.phase === 'steady hot' && entry.body.when === 'after repair')

/** Why a hot reading that could be judged is no proof, the gravest reason first; undefined when it is one. */
function whyNoProof(
  { byTeeAtTheSwitch }: ReadingBody,
  { contacts, flutter, goodMargin, higherThanExpected, run, steady }: Comparison,
): string | undefined {
  if (contacts === 'open') return 'the contact was open at the hot reading. Look for why.'
  if (higherThanExpected === true)
    return 'the hot reading is higher than expected. That is no good margin: something on the inlet side may hold the air back.'
  if (flutter) return 'the hot reading flutters. Find out what moves it, and read again.'
  if (run?.thin === true)
    return 'the hot reading is enough, but thin. That is no proof: the cause may still be there.'
  if (!goodMargin)
    return 'the hot reading is not clearly enough. Read again, or look for what is still wrong.'
  // One that opens on rise is closed as well while the furnace runs as it should.
  if (contacts !== 'closed')
    return 'the contact was not read at the hot reading. Read again, and say what it shows.'
  if (!byTeeAtTheSwitch) return 'the hot reading was not taken by a tee at the switch. Read it there.'
  return steady === 'steady'
    ? undefined
    : 'the hot reading was not watched for a minute. Watch it, and type how long.'
}

/**
 * What is lacking until CO in the room and in the flue was measured after the repair, steady and within its limits.
 * @param visitId of the visit that is ended
 */
export function proofOfCombustionNeeds(visitId: string, { file, judged }: EndingFacts): string[] {
  const { combustionTests } = file
  const readInService = judged.filter(inService)
  const proves = (test: Entry<CombustionTestBody> | undefined): CombustionTestBody | undefined =>
    test !== undefined &&
    test.body.when === 'after repair' &&
    !isOutdated(test, file) &&
    !isReadSince(test, visitId, readInService)
      ? test.body
      : undefined
  const room = proves(combustionTests.findLast(({ body }) => body.roomCoPpm !== undefined))
  const flue = proves(combustionTests.findLast(({ body }) => body.flueCoPpm.length > 0))
  return [
    ...unless(room?.roomCoPpm !== undefined, 'CO in the room after the repair.'),
    ...unless(
      room === undefined || (room.roomCoLimitPpm !== undefined && room.roomCoPpm! <= room.roomCoLimitPpm),
      'CO in the room within the limit that your employer has set: type that limit.',
    ),
    ...flueNeeds(flue),
  ]
}

function flueNeeds(flue: CombustionTestBody | undefined): string[] {
  if (flue === undefined) return ['CO in the flue after the repair, air-free.']
  const airFree = airFreeOf(flue)
  const limit = flue.flueCoLimitPpm
  return [
    ...unless(limit !== undefined, 'The limit for CO in the flue, air-free, typed from this unit’s manual.'),
    ...unless(limit === undefined || Math.max(...airFree) <= limit, 'CO in the flue within that limit.'),
    ...unless(isSteady(airFree), 'CO in the flue steady: two values or more that agree.'),
    ...unless(
      flue.minutesRunning !== undefined &&
        flue.minutesAsked !== undefined &&
        flue.minutesRunning >= flue.minutesAsked,
      'CO in the flue after the running time that the manual asks for: type both times.',
    ),
  ]
}
