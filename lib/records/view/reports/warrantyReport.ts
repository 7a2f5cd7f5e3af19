import type { Entry } from '../../fold/entry'
import type { TeamFile } from '../../fold/teamFile'
import type { FurnaceBody } from '../../kinds/furnace'
import type { ReadingBody } from '../../kinds/reading'
import type { AnyRepairBody } from '../../kinds/repair'
import type { WarrantyAnswerBody } from '../../kinds/warrantyAnswer'
import { warrantyOutcomes } from '../../warrantyTerms'
import { answersByPart, byDay } from '../answersOfRepair'
import { ofFurnace } from '../ofFurnace'
import { sceneBefore } from '../swaps/sceneBefore'
import { type SwapFacts, switchSwapsIn } from '../swaps/switchSwaps'
import { isIn, type Period } from './period'

type Answer = Entry<WarrantyAnswerBody>

/** What was on record of a part that went back, when its answer was recorded. */
export type WarrantyEvidence = {
  /** Readings before the repair, at that switch where the repair names one, with the rated points written beside them. */
  readingsBefore: number
  /** One of the readings before saw the contact open. */
  contactSeenOpen: boolean
  /** A hand pump was put on the switch, off the furnace. */
  checkedOffTheFurnace: boolean
  /** A reading in service after the repair. */
  readAfterwards: boolean
}

/** The answer that counts about one part, and what stands against it or for it. */
export type AnsweredPart = {
  answer: Answer
  repair: Entry<AnyRepairBody>
  furnace: Entry<FurnaceBody>
  evidence: WarrantyEvidence
  /** Where the repair replaced a switch: how it was held against what stood just before it. */
  swap?: SwapFacts
}

export type OutcomeCount = {
  outcome: WarrantyAnswerBody['outcome']
  count: number
  /** Sums in the smallest unit, by currency in the order of the alphabet: amounts of two currencies never add up. */
  sums: readonly (readonly [currency: string, minorUnits: number])[]
  withoutAmount: number
}

export type WarrantyReport = {
  counts: readonly OutcomeCount[]
  /** Denied first, then those that wait; the newest answer first. */
  open: readonly AnsweredPart[]
  /** Denied, although nothing was missing that a replacement of a switch asks for. */
  deniedWithNothingMissing: number
}

/**
 * The answers about parts that went back whose day lies in a period: one a part of a repair, the newest. Answers about
 * a repair that was withdrawn are left out with it.
 */
export function warrantyReport(file: TeamFile, period: Period): WarrantyReport {
  const swaps = new Map(switchSwapsIn(file).map((swap) => [swap.repair.id, swap]))
  const parts = [...answersByPart(file).values()].flatMap((answers): AnsweredPart[] => {
    const answer = answers.at(-1)!
    if (!isIn(period, Date.parse(answer.body.on))) return []
    const repair = file.repairs.get(answer.body.repairId)
    const furnace = repair && file.furnaces.get(file.keptId(repair.body.furnaceId))
    if (repair?.withdrawn !== undefined || repair === undefined || furnace === undefined) return []
    const swap = swaps.get(repair.id)
    const evidence = evidenceOf(file, answer, repair, swap)
    return [{ answer, repair, furnace, evidence, ...(swap === undefined ? {} : { swap }) }]
  })
  const of = (outcome: WarrantyAnswerBody['outcome']) =>
    parts.filter(({ answer }) => answer.body.outcome === outcome).sort((a, b) => byDay(b.answer, a.answer))
  return {
    counts: warrantyOutcomes.map((outcome) => countOf(outcome, of(outcome))),
    open: [...of('denied'), ...of('waiting')],
    deniedWithNothingMissing: of('denied').filter(({ swap }) => swap?.missing.length === 0).length,
  }
}

function countOf(outcome: WarrantyAnswerBody['outcome'], parts: readonly AnsweredPart[]): OutcomeCount {
  const sums = new Map<string, number>()
  let withoutAmount = 0
  for (const { body } of parts.map(({ answer }) => answer)) {
    if (body.amountMinorUnits === undefined || body.currency === undefined) withoutAmount += 1
    else sums.set(body.currency, (sums.get(body.currency) ?? 0) + body.amountMinorUnits)
  }
  const inOrder = [...sums].sort(([one], [other]) => (one < other ? -1 : 1))
  return { outcome, count: parts.length, sums: inOrder, withoutAmount }
}

/** What was before the repair is taken from just before it was recorded, the rest from just before the answer was. */
function evidenceOf(
  file: TeamFile,
  answer: Answer,
  repair: Entry<AnyRepairBody>,
  swap: SwapFacts | undefined,
): WarrantyEvidence {
  const { furnaceId, caseId } = repair.body
  const positionId = swap?.position?.id ?? repair.body.positionId
  const isOf = (body: { caseId?: string; positionId?: string }) =>
    caseId !== undefined &&
    body.caseId !== undefined &&
    file.keptId(body.caseId) === file.keptId(caseId) &&
    (positionId === undefined ||
      (body.positionId !== undefined && file.keptId(body.positionId) === file.keptId(positionId)))
  const then = sceneBefore(file, furnaceId, repair.at)
  const before = ofFurnace(then, then.readings, furnaceId).filter(
    ({ body }) => isOf(body) && body.when !== 'after repair',
  )
  const answered = sceneBefore(file, furnaceId, answer.at)
  return {
    readingsBefore: before.filter(hasRatedPoints).length,
    contactSeenOpen: before.some(({ body }) => body.contacts === 'open'),
    checkedOffTheFurnace: ofFurnace(answered, answered.switchChecks, furnaceId).some(
      ({ body }) => isOf(body) && body.what === 'off the furnace',
    ),
    readAfterwards: ofFurnace(answered, answered.readings, furnaceId).some(
      ({ at, body }) => at > repair.at && isOf(body) && body.when === 'after repair',
    ),
  }
}

const hasRatedPoints = ({ body }: Entry<ReadingBody>): boolean => (body.against ?? []).length > 0
