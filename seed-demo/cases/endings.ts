import { unlistedCause } from '@/lib/core/diagnosis'
import { type DangerCode, dangerSentence } from '@/lib/core/guard'
import { happens, pick, workingDayAfter } from '../drawing'
import { makers } from '../makers'
import { factorySwitch } from './mend'
import type { Visit } from './visit'
import { declined, heatAndFrost, orderedWhere, told, unlistedNotes } from './words'

/** What somebody names as the cause. */
export type Named = { main: string; contributing?: string | undefined }

export const namedCauses = (random: () => number, { main, contributing }: Named) => ({
  mainCause: main,
  ...(contributing === undefined ? {} : { contributingCause: contributing }),
  ...(main === unlistedCause ? { note: pick(random, unlistedNotes) } : {}),
})

/** Ends a visit to wait for a part; the number is the factory switch's, or the maker's for anything else. */
export function waitForPart(visit: Visit, named: Named, isSwitch: boolean, minutes: number): void {
  const { random, house } = visit
  const part = isSwitch ? factorySwitch(visit, house.stages[0]!) : undefined
  visit.end({
    how: 'waiting for part',
    ...namedCauses(random, named),
    confirmingTest: 'confirmed',
    partNumber: part?.number ?? makers[house.range.maker].partNumber(200 + Math.floor(random() * 90)),
    supersessionChecked: !happens(random, 0.06),
    ...(happens(random, 0.06) ? {} : { orderedWhere: pick(random, orderedWhere) }),
    minutes,
  })
}

export function findNoFault(visit: Visit, minutes: number): void {
  const followUpOn = workingDayAfter(visit.on, 7 + Math.floor(visit.random() * 20), '2027-03-31')
  visit.end({ how: 'no fault found', ...(happens(visit.random, 0.12) ? {} : { followUpOn }), minutes })
}

export function decline(visit: Visit, named: Named, minutes: number): void {
  const declinedBecause = pick(visit.random, declined)
  visit.end({ how: 'repair declined', ...namedCauses(visit.random, named), declinedBecause, minutes })
}

/** Writes the notice and ends the visit. Answers the notice's id. */
export function leaveOff(
  visit: Visit,
  named: Named | undefined,
  codes: readonly DangerCode[],
  minutes: number,
): string {
  const { random, house, on } = visit
  const found =
    codes.length > 0
      ? codes.map((code) => dangerSentence[code]).join(' ')
      : 'Nothing proves air in this furnace.'
  const noticeId = visit.say(
    'shut-down notice',
    {
      furnaceId: house.furnaceId,
      caseId: visit.caseId,
      on,
      found,
      doNotRelightUntil: 'what is written above is put right and proven by readings and a CO test',
      gas: 'off',
      power: 'off',
      tagged: true,
      told: pick(random, told),
      toldAt: `${on}T${15 + Math.floor(random() * 4)}:${10 + Math.floor(random() * 49)}:00.000Z`,
      writtenNotice: !happens(random, 0.05),
      authority: 'not asked for here',
      heatAndFrost: pick(random, heatAndFrost),
    },
    [4, 10],
  )
  visit.end({
    how: 'left off',
    ...(named === undefined ? {} : namedCauses(random, named)),
    noticeId,
    minutes,
  })
  return noticeId
}

export function lift(visit: Visit, noticeId: string): void {
  const because = 'Put right; readings on every stage and CO taken, three cycles watched'
  visit.say(
    'lifting',
    { noticeId, on: visit.on, because, licence: 'gas fitter, valley register 0417' },
    [1, 3],
  )
}
