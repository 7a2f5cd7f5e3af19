import type { Comparison } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { CaseFile } from './caseFile'
import { airFreeOf, isSteady } from './dangers'
import type { EndingFacts } from './endingNeeds'
import { unless } from './unless'

/**
 * Whether something measured after one repair was followed by another: it says nothing of the furnace as it is now. A
 * repair that is written down only after the measurements is no second one.
 */
const isOutdated = ({ at }: Entry<unknown>, { repairs }: CaseFile): boolean =>
  repairs.some((repair) => repair.at < at) && repairs.some((repair) => repair.at > at)

/** What is lacking until every stage was read hot after the repair, at the points of its rating, enough and not thin. */
export function hotReadingNeeds({ file, judged, toProve }: EndingFacts): string[] {
  return toProve.flatMap((position) => {
    const after = judged.findLast(
      ({ entry, positionId }) =>
        positionId === position.id &&
        entry.body.when === 'after repair' &&
        entry.body.phase === 'steady hot' &&
        entry.body.situation === 'as found',
    )
    const name = position.body.name
    if (after === undefined) return [`${name}: a hot reading after the repair, as in service.`]
    if (isOutdated(after.entry, file))
      return [`${name}: its hot reading is from before the last repair. Read again.`]
    if (!after.comparison.ok)
      return [`${name}: its hot reading proves nothing. ${after.comparison.problem.message}`]
    const { value } = after.comparison
    return value.goodMargin ? [] : [`${name}: ${whyNoProof(value)}`]
  })
}

/** Why a hot reading that could be judged is no proof, the gravest reason first. */
function whyNoProof({ contacts, flutter, higherThanExpected, run }: Comparison): string {
  if (contacts === 'open') return 'the contact was open at the hot reading. Look for why.'
  if (higherThanExpected === true)
    return 'the hot reading is higher than expected. That is no good margin: something on the inlet side may hold the air back.'
  if (flutter) return 'the hot reading flutters. Find out what moves it, and read again.'
  return run?.thin === true
    ? 'the hot reading is enough, but thin. That is no proof: the cause may still be there.'
    : 'the hot reading is not clearly enough. Read again, or look for what is still wrong.'
}

/** What is lacking until CO in the room and in the flue was measured after the repair, steady and within its limits. */
export function proofOfCombustionNeeds(file: CaseFile): string[] {
  const after = file.combustionTests.filter(
    (test) => test.body.when === 'after repair' && !isOutdated(test, file),
  )
  const room = after.findLast(({ body }) => body.roomCoPpm !== undefined)?.body
  const flue = after.findLast(({ body }) => body.flueCoPpm.length > 0)?.body
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
