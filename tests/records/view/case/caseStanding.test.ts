import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { isOver } from '@/lib/records/view/case/caseStanding'
import { endingFactsOf } from '@/lib/records/view/case/endingFacts'
import { endingNeeds } from '@/lib/records/view/case/endingNeeds'
import {
  aCase,
  at,
  aVisit,
  ending,
  finding,
  hot,
  ids,
  lifting,
  notice,
  ofVisit,
  opened,
  proven,
  reading,
  repair,
  said,
  team,
  viewOf,
  withdrawn,
} from './team'

const standing = (...records: readonly (HeldRecord | readonly HeldRecord[])[]) =>
  viewOf(team(...records)).standing
const next = aVisit({ on: '2026-01-14' }, { id: '01940000-0000-7000-8000-000000000043', at: at(14) })

describe('how a case stands', () => {
  test('while its newest visit goes on, it is being worked on', () => {
    expect(standing(opened)).toBe('being worked on')
    expect(standing(aCase())).toBe('being worked on')
    expect(standing(proven, ending(), next)).toBe('being worked on')
  })

  test('ended with all that its way asks for, it stands as that way', () => {
    expect(standing(proven, ending())).toBe('repaired and proven')
    expect(standing(opened, repair(), ending({ how: 'repaired, not proven' }))).toBe('repaired, not proven')
    const waiting = { partNumber: 'OM-7731K', supersessionChecked: true, orderedWhere: 'North counter' }
    expect(standing(opened, ending({ how: 'waiting for part', ...waiting }))).toBe('waiting for part')
    expect(standing(opened, reading(0.7), ending({ how: 'no fault found', followUpOn: '2026-01-20' }))).toBe(
      'no fault found',
    )
    expect(standing(opened, ending({ how: 'repair declined', declinedBecause: 'Too dear' }))).toBe(
      'repair declined',
    )
  })

  test('ended without, it is not finished, and says what is missing', () => {
    const view = viewOf(team(opened, ending({ how: 'repair declined' })))
    expect(view.standing).toBe('not finished')
    expect(view.missing).toEqual(['Why it was declined, in the words of whoever declined.'])
  })

  test('two endings of its newest visit disagree until all but one are withdrawn', () => {
    const [one, other] = [
      ending(),
      ending({ how: 'repair declined', declinedBecause: 'Too dear' }, { by: 'person-2' }),
    ]
    expect(standing(proven, one, other)).toBe('endings disagree')
    expect(standing(proven, one, other, withdrawn(other))).toBe('repaired and proven')
    expect(standing(proven, one, other, next)).toBe('being worked on')
  })

  test('withdrawing the ending puts it back to being worked on', () => {
    const end = ending()
    expect(standing(proven, end, withdrawn(end))).toBe('being worked on')
  })

  const off = notice()
  const endedOff = ending({ how: 'left off', noticeId: off.id })

  test('while a notice of its own stands, it is left off, whatever was ended since', () => {
    expect(standing(opened, off)).toBe('left off')
    expect(standing(opened, off, endedOff)).toBe('left off')
    expect(standing(proven, off, ending())).toBe('left off')
  })

  test('once that is lifted the work goes on, until the case is ended in another way', () => {
    expect(standing(opened, off, endedOff, lifting(off))).toBe('being worked on')
    expect(standing(proven, off, ending(), lifting(off))).toBe('repaired and proven')
  })

  test('a withdrawn notice or lifting counts for nothing', () => {
    const up = lifting(off)
    expect(standing(opened, off, withdrawn(off))).toBe('being worked on')
    expect(standing(opened, off, up, withdrawn(up))).toBe('left off')
  })

  test('a notice written on no case is about every case that is not over', () => {
    const onNone = notice({ caseId: undefined }, { at: at(15) })
    expect(standing(opened, onNone)).toBe('left off')
    expect(standing(proven, ending(), onNone)).toBe('repaired and proven')
  })

  test('a notice written on another case is not about this one', () => {
    const other = aCase({}, { id: '01940000-0000-7000-8000-000000000044', at: at(15) })
    expect(standing(opened, other, notice({ caseId: other.id }, { at: at(15) }))).toBe('being worked on')
  })
})

describe('what comes after an ending takes nothing back from it', () => {
  const later = (day: number, record: (when: { at: string }) => HeldRecord) => record({ at: at(day) })

  test('a generic switch found in another winter makes that case hazardous, not the one that was over', () => {
    const found = later(300, (when) =>
      said(
        'found fitted',
        {
          furnaceId: ids.furnace,
          positionId: ids.low,
          printed: 'GP',
          what: 'adjustable or general-purpose switch',
          fittedWhen: 'not known',
          fittedBy: 'not known',
          foundOn: '2026-10-27',
        },
        when,
      ),
    )
    const view = viewOf(team(proven, ending(), found))
    expect([view.standing, view.missing]).toEqual(['repaired and proven', []])
    expect(view.dangers.open).toHaveLength(1)
  })

  test('one that was there by the day of the visit bars it, whenever it is written down', () => {
    const found = (foundOn: string) =>
      said(
        'found fitted',
        {
          furnaceId: ids.furnace,
          positionId: ids.low,
          printed: 'GP',
          what: 'adjustable or general-purpose switch',
          fittedWhen: 'not known',
          fittedBy: 'not known',
          foundOn,
        },
        { at: at(13) },
      )
    expect(viewOf(team(proven, ending(), found('2026-01-12'))).missing).toHaveLength(1)
    expect(viewOf(team(proven, ending(), found('2026-01-13'))).missing).toEqual([])
  })

  test('a part number read off a switch later takes nothing back', () => {
    const read = said(
      'fitted part',
      { furnaceId: ids.furnace, positionId: ids.low, caseId: ids.case, printed: 'GP-ADJ-1' },
      { at: at(13) },
    )
    const view = viewOf(team(proven, ending(), read))
    expect([view.missing, view.dangers.open.length]).toEqual([[], 1])
  })

  test('a danger recorded on a duplicate of the visit bars it, though the duplicate was withdrawn', () => {
    const twin = aVisit({}, { id: '01940000-0000-7000-8000-000000000045', at: at(12, '09:05') })
    const seen = finding('spillage', 'seen', '09:10', { visitId: twin.id })
    expect(viewOf(team(proven, twin, seen, withdrawn(twin), ending())).missing[0]).toMatch(
      /^A danger is open: Combustion products spill/,
    )
  })

  test('nor does a notice written since', () => {
    const off = notice({ caseId: undefined }, { at: at(300) })
    expect(viewOf(team(proven, ending(), off)).missing).toEqual([])
  })

  test('what was found with the ending or before it bars it until it is put right', () => {
    const seen = finding('spillage', 'seen', '12:00')
    expect(viewOf(team(proven, seen, ending())).missing[0]).toMatch(
      /^A danger is open: Combustion products spill/,
    )
    const off = notice({ caseId: undefined })
    expect(viewOf(team(proven, off, ending())).missing).toHaveLength(1)
    expect(viewOf(team(proven, off, ending(), lifting(off))).missing).toEqual([])
  })

  test('a proof measured on a later visit does not finish an ending of an earlier one', () => {
    const withoutHot = proven.filter(({ body }) => body.phase !== 'steady hot')
    const lateProof = [
      hot(0.65, { ...ofVisit, visitId: next.id }, { at: at(14) }),
      hot(0.95, { positionId: ids.high, visitId: next.id }, { at: at(14) }),
    ]
    const second = ending({ visitId: next.id }, { at: at(14, '15:00') })
    const co = said('combustion test', { ...proven.at(-1)!.body, visitId: next.id }, { at: at(14) })
    const file = team(withoutHot, ending(), next, lateProof, co, second)
    const view = viewOf(file)
    const lacking = view.file.visits.map(({ endings: [one] }) =>
      endingNeeds(one!.body, endingFactsOf(file, view.file, one!, view.judged)),
    )
    expect(lacking).toEqual([
      [
        'High fire: a hot reading after the repair, as in service.',
        'Low fire: a hot reading after the repair, as in service.',
      ],
      [],
    ])
    expect(view.standing).toBe('repaired and proven')
  })
})

test('a case is over after a proven repair, no fault found and a declined repair, and after nothing else', () => {
  const words = [
    'being worked on',
    'endings disagree',
    'left off',
    'not finished',
    'repaired and proven',
    'repaired, not proven',
    'waiting for part',
    'no fault found',
    'repair declined',
  ] as const
  expect(words.filter(isOver)).toEqual(['repaired and proven', 'no fault found', 'repair declined'])
})
