import { unlistedCause } from '@/lib/core/diagnosis'
import { type Danger, type Requirement, requirementText } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import type { EndingBody, EndingWay } from '@/lib/records/kinds/ending'
import type { PositionBody } from '@/lib/records/kinds/position'
import { neverFittedIn, neverFittedPart } from '@/lib/records/neverFitted'
import { putBackItems } from '@/lib/records/putBackItems'
import type { CaseFile } from './caseFile'
import { faultsRead } from './faultsRead'
import type { JudgedReading } from './judgedReading'
import { noticeOfEnding } from './leftOff'
import { noticeNeeds } from './notices'
import { hotReadingNeeds, proofOfCombustionNeeds } from './proofNeeds'
import { unless } from './unless'

/** What an ending is judged by, beside what it says itself. */
export type EndingFacts = {
  file: CaseFile
  judged: readonly JudgedReading[]
  openDangers: readonly Danger[]
  toProve: readonly Entry<PositionBody>[]
  /** What had to be on record before a switch may be named as this cause, and was not; nothing for any other cause. */
  missingToBlame: (cause: string | undefined) => readonly Requirement[]
  /** When the visit ended, ISO 8601; left out while it goes on. */
  endedAt?: string
}

/** Where something that an ending lacks is recorded: in the ending itself, or somewhere else in the case. */
type NeedPlace =
  | 'ending'
  | 'dangers'
  | 'switch'
  | 'repairs'
  | 'furnace'
  | 'readings'
  | 'combustion'
  | 'notice'

/** One thing that an ending lacks, as a sentence, and where it is recorded; in the ending itself, in which field. */
export type EndingNeed =
  | { sentence: string; at: Exclude<NeedPlace, 'ending'> }
  | { sentence: string; at: 'ending'; field: keyof EndingBody }

/** Thermostat cycles that a proven repair asks for (common practice, no published source). */
const cyclesAsked = 3

/**
 * What an ending still lacks for its way of ending, in the order of the work; empty when it is finished. An ending is
 * kept whether it is finished or not.
 */
export function endingNeedsByPlace(ending: EndingBody, facts: EndingFacts): EndingNeed[] {
  const danger =
    ending.how === 'left off' || facts.openDangers.length === 0
      ? []
      : [
          `A danger is open: ${facts.openDangers.map(({ sentence }) => sentence).join(' ')} Put it right and record that it is gone, or leave the furnace off.`,
        ]
  return [...at('dangers', danger), ...needsOf[ending.how](ending, facts)]
}

/** The same as sentences alone. */
export const endingNeeds = (ending: EndingBody, facts: EndingFacts): string[] =>
  endingNeedsByPlace(ending, facts).map(({ sentence }) => sentence)

const needsOf: Record<EndingWay, (ending: EndingBody, facts: EndingFacts) => EndingNeed[]> = {
  'repaired and proven': (ending, facts) => [
    ...at('notice', stillLeftOff(ending, facts.file)),
    ...said('mainCause', ending.mainCause !== undefined, 'The main cause.'),
    ...said(
      'note',
      ![ending.mainCause, ending.contributingCause].includes(unlistedCause) || ending.note !== undefined,
      'What the cause was that is not on the list: describe it in the note.',
    ),
    ...said(
      'confirmingTest',
      ending.confirmingTest === 'confirmed',
      'What the test that confirms the main cause showed: it must have confirmed it.',
    ),
    ...at(
      'switch',
      facts
        .missingToBlame(ending.mainCause)
        .map((each) => `Before the switch is named as the cause: ${requirementText[each]}`),
    ),
    ...at('repairs', repaired(facts.file)),
    ...said('minutes', ending.minutes !== undefined, 'The minutes that the work took.'),
    ...(facts.toProve.length === 0
      ? at('furnace', [
          'Which switches this furnace has: name its model range, so that every stage can be proven.',
        ])
      : at('readings', hotReadingNeeds(ending.visitId, facts))),
    ...at('combustion', proofOfCombustionNeeds(ending.visitId, facts)),
    ...said(
      'thermostatCycles',
      (ending.thermostatCycles ?? 0) >= cyclesAsked,
      `${cyclesAsked} cycles from the thermostat, watched.`,
    ),
    ...putBackItems.flatMap((item) =>
      said(
        'putBack',
        ending.putBack?.includes(item) === true || ending.nothingToPutBack?.includes(item) === true,
        `Put back: ${item}.`,
      ),
    ),
  ],
  'repaired, not proven': (_ending, { file }) => at('repairs', repaired(file)),
  'waiting for part': (ending) => [
    ...said('partNumber', ending.partNumber !== undefined, 'The part number that is waited for.'),
    ...said(
      'partNumber',
      neverFittedPart(ending.partNumber) === undefined,
      'The number of a factory part: what is named is never fitted.',
    ),
    ...said(
      'supersessionChecked',
      ending.supersessionChecked === true,
      'Whether the number has been superseded: check it.',
    ),
    ...said('orderedWhere', ending.orderedWhere !== undefined, 'Where it is ordered.'),
  ],
  'no fault found': (ending, facts) => [
    ...at('notice', stillLeftOff(ending, facts.file)),
    ...at(
      'readings',
      unless(
        facts.file.readings.length > 0,
        'A reading: without one nobody can tell next time what was normal.',
      ),
    ),
    ...at('readings', faultsRead(facts)),
    ...said('followUpOn', ending.followUpOn !== undefined, 'The day of the follow-up.'),
  ],
  'repair declined': (ending) =>
    said(
      'declinedBecause',
      ending.declinedBecause !== undefined,
      'Why it was declined, in the words of whoever declined.',
    ),
  'left off': ({ noticeId, visitId }, { file: { notices, visits }, endedAt }) => {
    const visitAt = visits.find(({ entry }) => entry.id === visitId)?.entry.at
    const notice = noticeOfEnding(notices, { noticeId, visitAt, endedAt })?.entry.body
    return at('notice', notice === undefined ? ['The shut-down notice.'] : noticeNeeds(notice))
  },
}

const repaired = ({ repairs }: CaseFile): string[] =>
  unless(
    repairs.some(({ body }) => neverFittedIn(body) === undefined),
    'What was done: record the repair with its parts.',
  )

/** A furnace that is left off proves nothing, whatever case it was left off for. */
const stillLeftOff = ({ visitId }: EndingBody, { notices, leftOffUnnoticed }: CaseFile): string[] => [
  ...unless(
    notices.every(({ lifting }) => lifting !== undefined),
    'The furnace is left off: lift its shut-down notice first, or end the visit as left off.',
  ),
  ...unless(
    // Two endings of one visit are settled by withdrawing one.
    leftOffUnnoticed.every(({ body }) => body.visitId === visitId),
    'The furnace was left off without a shut-down notice: write the notice and have it lifted first, or end the visit as left off.',
  ),
]

const at = (place: Exclude<NeedPlace, 'ending'>, sentences: readonly string[]): EndingNeed[] =>
  sentences.map((sentence) => ({ sentence, at: place }))

/** What the ending itself has to say in one of its fields. */
const said = (field: keyof EndingBody, isThere: boolean, sentence: string): EndingNeed[] =>
  unless(isThere, sentence).map((missing) => ({ sentence: missing, at: 'ending', field }))
