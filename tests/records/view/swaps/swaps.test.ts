import { describe, expect, test } from 'vitest'
import { findings } from '@/lib/catalogue/findings'
import { usualCallbackWindow } from '@/lib/core/callbacks'
import type { Requirement } from '@/lib/core/guard'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { nothingOnRecord } from '@/lib/records/view/swaps/nothingOnRecord'
import { sceneBefore } from '@/lib/records/view/swaps/sceneBefore'
import { type SwapFacts, switchSwapsIn } from '@/lib/records/view/swaps/switchSwaps'
import { unjustifiedSwapsIn } from '@/lib/records/view/swaps/unjustifiedSwaps'
import {
  aCase,
  at,
  aVisit,
  base,
  ending,
  finding,
  hot,
  ids,
  inches,
  opened,
  reading,
  repair,
  said,
  team,
  withdrawn,
} from '../case/team'

type Records = readonly HeldRecord[]

/** Every look done and found in order. */
const looks: Records = findings.flatMap(({ id, proves }) => {
  const clear = Object.entries(proves?.whenValue ?? {}).find(([, means]) => means === 'clear')
  return clear === undefined ? [] : [finding(id, clear[0])]
})
const fittedPart = said(
  'fitted part',
  { furnaceId: ids.furnace, positionId: ids.low, caseId: ids.case, printed: 'OM-7731' },
  { at: at(12, '09:25') },
)
/** 0.90 in. w.c. for a minute at the switch, contact open, against closes at 0.58 ± 0.05: well above 0.63. */
const faulty = reading(0.9)
/** All that the rule asks for of a switch that will not close. */
const complete: Records = [...opened, ...looks, fittedPart, faulty]
const swapped = {
  done: 'Switch replaced',
  switchReplaced: true,
  fittedPart: ids.newPart,
  positionId: ids.low,
}
const swap = (more: Record<string, unknown> = {}, when = at(12, '11:00')) =>
  repair({ ...swapped, ...more }, { at: when })
const without = (record: HeldRecord): Records => complete.filter((each) => each !== record)
const onlySwap = (...records: readonly (HeldRecord | Records)[]): SwapFacts => {
  const swaps = switchSwapsIn(team(...records))
  expect(swaps).toHaveLength(1)
  return swaps[0]!
}
const missing = (...records: readonly (HeldRecord | Records)[]): Requirement[] => onlySwap(...records).missing

// What has to be on record is common practice, no published source.
describe('switchSwapsIn(file): what stood on record just before each replacement', () => {
  test('everything was on record: justified, and the reading was enough to close it', () => {
    expect(onlySwap(complete, swap())).toMatchObject({
      caseId: ids.case,
      complaint: 'will not close',
      missing: [],
      reading: 'enough to close it',
      readAfterwards: false,
    })
  })

  test('what was missing is listed: no reading at all, and no look at the trap', () => {
    expect(missing(without(faulty), swap())).toEqual(
      expect.arrayContaining(['gauge-zeroed', 'reading-at-the-switch', 'contact-open-at-that-moment']),
    )
    const trap = looks.find(({ body }) => body.finding === 'trap')!
    expect(missing(without(trap), swap())).toEqual(['drain-and-trap-clear'])
  })

  test('what was said only afterwards justifies nothing', () => {
    const late = reading(0.9, {}, { at: at(12, '11:05') })
    expect(missing(without(faulty), swap(), late)).toEqual(missing(without(faulty), swap()))
    expect(onlySwap(without(faulty), swap(), late).reading).toBe('none')
  })

  test('a rating that came in later changes nothing, for or against', () => {
    const ratingIds: readonly string[] = [ids.lowCloses, ids.lowClosesSaid, ids.lowOpens, ids.lowOpensSaid]
    const reports = base.filter(({ id }) => ratingIds.includes(id))
    const saidAt = (when: string) =>
      base.map((one) => (reports.includes(one) ? { ...one, saidAt: when } : one))
    const missingWith = (file: Records, ...more: Records) =>
      switchSwapsIn(foldTeamFile([...file, ...complete, swap(), ...more]))[0]!.missing
    expect(missingWith(saidAt(at(12, '10:59')))).toEqual([])
    expect(missingWith(saidAt(at(12, '11:01')))).toContain('rating-trusted')
    // Another number from the maker, two days later: in dispute from then on, and was not that day.
    const other = said(
      'report',
      { ...reports[0]!.body, pascals: inches(0.9), asWritten: 'closes 0.9', origin: 'manual LF2, later' },
      { at: at(14) },
    )
    expect(missingWith(base, other)).toEqual([])
    expect(missingWith(base, ...reports.map((report) => withdrawn(report, at(14))))).toEqual([])
    expect(missingWith(base, ...reports.map((report) => withdrawn(report, at(11))))).toContain(
      'rating-trusted',
    )
  })

  test('a finding taken back later stood that day; one taken back before did not', () => {
    const trap = looks.find(({ body }) => body.finding === 'trap')!
    expect(missing(complete, swap(), withdrawn(trap, at(12, '11:30')))).toEqual([])
    expect(missing(complete, swap(), withdrawn(trap, at(12, '10:30')))).toEqual(['drain-and-trap-clear'])
  })

  test('a repair that is withdrawn replaced nothing, and one without a switch neither', () => {
    const taken = swap()
    expect(switchSwapsIn(team(complete, taken, withdrawn(taken)))).toEqual([])
    expect(switchSwapsIn(team(complete, repair()))).toEqual([])
  })

  test('with a reading below the make point it says so', () => {
    expect(onlySwap(without(faulty), reading(0.4), swap())).toMatchObject({
      reading: 'too low to close it',
      missing: expect.arrayContaining(['reading-clears-the-limit']),
    })
    expect(onlySwap(without(faulty), reading(0.58), swap()).reading).toBe('too close to call')
  })

  test('a cause of the switch’s own is held against its own list', () => {
    const ofContacts = ending({ mainCause: 'contacts-resistive' })
    expect(onlySwap(without(faulty), swap(), ofContacts)).toMatchObject({
      complaint: 'drops voltage when closed',
      missing: [
        'contact-closed',
        'reading-well-beyond-make',
        'drop-under-load',
        'terminals-clean',
        'drop-repeated',
      ],
    })
    expect(onlySwap(complete, swap(), ofContacts).missing).toEqual([])
  })

  test('what was known to be unsuitable comes out whatever it reads; a jumper is no reason for a new switch', () => {
    const found = (what: string) =>
      said(
        'found fitted',
        {
          furnaceId: ids.furnace,
          positionId: ids.low,
          printed: 'GP-ADJ-1',
          what,
          fittedWhen: 'not known',
          fittedBy: 'not known',
          foundOn: '2026-01-12',
        },
        { at: at(12, '09:20') },
      )
    expect(missing(opened, found('adjustable or general-purpose switch'), swap())).toEqual([])
    expect(missing(opened, found('jumper or bypass'), swap()).length).toBeGreaterThan(10)
  })

  test('outside any case all of it is missing, and the first version of a repair counts by its part', () => {
    const { switchReplaced: _, ...old } = { ...swapped, furnaceId: ids.furnace, on: '2026-01-12' }
    const facts = onlySwap(complete, said('repair', old, { version: 1, at: at(12, '11:00') }))
    expect(facts.missing).toEqual(nothingOnRecord().missing)
    expect(facts.missing.length).toBeGreaterThan(10)
    expect(facts.caseId).toBeUndefined()
  })

  test('a reading after the repair, at that switch, is counted as taken', () => {
    expect(onlySwap(complete, swap(), hot(0.7)).readAfterwards).toBe(true)
    expect(onlySwap(complete, swap(), hot(0.95, { positionId: ids.high })).readAfterwards).toBe(false)
    expect(onlySwap(complete, swap(), reading(0.7, {}, { at: at(12, '11:30') })).readAfterwards).toBe(false)
  })

  describe('once a join of two furnaces is taken back', () => {
    const other = '01940000-0000-7000-8000-000000000801'
    const furnace = said(
      'furnace',
      { siteLabel: 'Tarn Gate 4', model: 'LF2-060-A', fuel: 'not stated' },
      { id: other },
    )
    const joined = said(
      'same as',
      { kept: other, duplicate: ids.furnace, reason: 'One furnace' },
      { at: at(12, '09:15') },
    )
    const apart = withdrawn(joined, at(13))
    const read = reading(0.9, { furnaceId: other })

    test('what was read meanwhile counts for the replacement, though it names the other furnace', () => {
      const records = [...without(faulty), furnace, joined, read, swap()]
      expect(onlySwap(records, apart)).toMatchObject({ missing: [], reading: 'enough to close it' })
    })

    test('so does the number that was read off the old switch meanwhile', () => {
      const printed = said('fitted part', { ...fittedPart.body, furnaceId: other }, { at: at(12, '09:25') })
      const records = [...without(fittedPart), furnace, joined, swap(), apart]
      expect(onlySwap(records).missing).not.toEqual([])
      expect(onlySwap(records, printed).missing).toEqual([])
    })

    test('the replacement itself, said meanwhile, is judged on the furnace of its case, and so is what was read after it', () => {
      const after = hot(0.7, { furnaceId: other })
      const records = [...without(faulty), furnace, joined, read, swap({ furnaceId: other }), after]
      expect(onlySwap(records).furnace.id).toBe(other)
      const { furnace: on, ...facts } = onlySwap(records, apart)
      expect(on.id).toBe(ids.furnace)
      expect(facts).toMatchObject({ missing: [], reading: 'enough to close it', readAfterwards: true })
    })

    test('the other furnace has it in its scene as well, since the record says so', () => {
      const file = team(without(faulty), furnace, joined, read, apart)
      for (const id of [ids.furnace, other])
        expect([...sceneBefore(file, id, at(12, '10:00')).readings.keys()]).toEqual([read.id])
    })
  })

  test('a second replacement is held against what was read since the first', () => {
    const [first, second] = switchSwapsIn(team(complete, swap(), swap({}, at(12, '12:00'))))
    expect(first!.missing).toEqual([])
    expect(second!.missing).toContain('reading-at-the-switch')
  })
})

describe('unjustifiedSwapsIn(file, window, now)', () => {
  const again = '01940000-0000-7000-8000-000000000700'
  const visit = '01940000-0000-7000-8000-000000000701'
  const proof = [hot(0.7), ending({ mainCause: 'switch-drifted-or-leaking', how: 'repaired, not proven' })]
  const cameBack = [
    aCase({}, { id: again, at: at(20, '08:00') }),
    aVisit({ caseId: again, on: '2026-01-20' }, { id: visit, at: at(20, '09:00') }),
    ending(
      { caseId: again, visitId: visit, mainCause: 'trap-plugged', how: 'repaired, not proven' },
      { at: at(20, '13:00') },
    ),
  ]
  const shown = (now: string, ...records: readonly (HeldRecord | Records)[]) =>
    unjustifiedSwapsIn(team(...records), usualCallbackWindow, now)

  test('came back after 7 days and 19 hours, and the trap was the cause then', () => {
    const { flagged, all, outsideCases } = shown(at(25), without(faulty), swap(), proof, cameBack)
    expect(flagged).toHaveLength(1)
    // Ended on the 12th at 13:00, opened on the 20th at 08:00.
    expect(flagged[0]!.afterwards).toEqual({
      became: 'came back',
      laterId: again,
      jobEndedAt: Date.parse(at(12, '13:00')),
      backAt: Date.parse(at(20, '08:00')),
      days: 7 + 19 / 24,
      laterCause: 'trap-plugged',
    })
    expect(flagged[0]!.swaps.map(({ repair }) => repair.body.done)).toEqual(['Switch replaced'])
    expect(all).toHaveLength(1)
    expect(outsideCases).toEqual([])
  })

  test('nothing is known before the window has run out, and quiet afterwards: that justifies nothing', () => {
    const records = [without(faulty), swap(), proof]
    expect(shown(at(25), ...records).flagged[0]!.afterwards.became).toBe('not known yet')
    expect(shown(at(60), ...records).flagged[0]!.afterwards.became).toBe('quiet')
  })

  test('a justified one is among all and not flagged', () => {
    const { flagged, all } = shown(at(60), complete, swap(), proof)
    expect(flagged).toEqual([])
    expect(all).toHaveLength(1)
  })

  test('two in one case are one flag, by the gravest reading and everything that was missing', () => {
    const { flagged } = shown(
      at(25),
      without(faulty),
      reading(0.4),
      swap(),
      swap({ positionId: ids.high, fittedPart: ids.highPart }, at(12, '11:10')),
      proof,
    )
    expect(flagged).toHaveLength(1)
    expect(flagged[0]).toMatchObject({ reading: 'too low to close it', almostCertainlyWrong: true })
    expect(flagged[0]!.swaps).toHaveLength(2)
  })

  test('one outside any case is listed apart, and one of a withdrawn case nowhere', () => {
    const outside = said(
      'repair',
      { ...swapped, furnaceId: ids.furnace, on: '2026-01-12' },
      { at: at(12, '11:00') },
    )
    expect(shown(at(25), outside).outsideCases).toHaveLength(1)
    const { all, flagged } = shown(at(25), complete, swap(), withdrawn(opened[0]!, at(13)))
    expect([...all, ...flagged]).toEqual([])
  })
})

describe('sceneBefore(file, furnaceId, moment)', () => {
  test('holds what was said before, nothing later, nothing of another furnace', () => {
    const other = '01940000-0000-7000-8000-000000000800'
    const file = team(
      complete,
      said('furnace', { siteLabel: 'Tarn Gate 3', model: 'LF2-060-A', fuel: 'not stated' }, { id: other }),
      said(
        'repair',
        { furnaceId: other, done: 'Cleaned', switchReplaced: false, on: '2026-01-12' },
        { at: at(12, '09:00') },
      ),
    )
    const scene = sceneBefore(file, ids.furnace, at(12, '09:26'))
    expect([...scene.furnaces.keys()]).toEqual([ids.furnace])
    expect(scene.fittedParts.size).toBe(1)
    expect(scene.readings.size).toBe(0)
    expect(scene.repairs.size).toBe(0)
    expect([...scene.reports.keys()].sort()).toEqual([...file.reports.keys()].sort())
    expect(sceneBefore(file, ids.furnace, at(1)).reports.size).toBe(0)
  })
})
