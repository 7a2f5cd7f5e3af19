import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { isLeftOff, leftOffWithoutNotice, noticeOfEnding } from '@/lib/records/view/case/leftOff'
import {
  aCase,
  at,
  aVisit,
  ending,
  ids,
  lifting,
  notice,
  ofVisit,
  opened,
  proven,
  team,
  viewOf,
  withdrawn,
} from './team'

const endedOff = ending({ how: 'left off' })
const second = aVisit({ on: '2026-01-14' }, { id: '01940000-0000-7000-8000-000000000061', at: at(14) })
const endedLater = ending({ visitId: second.id }, { at: at(15) })
const late = (day: number, more = {}) => notice(more, { at: at(day) })
const standing = (...records: readonly (HeldRecord | readonly HeldRecord[])[]) =>
  viewOf(team(...records)).standing
const noNotice =
  'The furnace was left off without a shut-down notice: write the notice and have it lifted first, or end the visit as left off.'

// Common practice, no published source: what was left off stays off until somebody with the licence lights it.
describe('a visit that left the furnace off without a notice', () => {
  test('leaves the case and the furnace left off', () => {
    expect(standing(opened, endedOff)).toBe('left off')
    const file = team(opened, endedOff)
    expect(isLeftOff(file, ids.furnace)).toBe(true)
    expect(leftOffWithoutNotice(file, ids.furnace).map(({ id }) => id)).toEqual([endedOff.id])
    expect(viewOf(file).missing).toEqual(['The shut-down notice.'])
  })

  test('bars a later visit from ending as proven or with no fault found', () => {
    const view = viewOf(team(proven, endedOff, second, endedLater))
    expect([view.standing, view.missing]).toEqual(['left off', [noNotice]])
    const nothing = { visitId: second.id, how: 'no fault found', followUpOn: '2026-01-20' }
    expect(viewOf(team(proven, endedOff, second, ending(nothing, { at: at(15) }))).missing).toEqual([
      noNotice,
    ])
  })

  test('bars it in another case of the furnace too', () => {
    const other = aCase({}, { id: '01940000-0000-7000-8000-000000000062', at: at(2) })
    const visit = aVisit({ caseId: other.id }, { id: '01940000-0000-7000-8000-000000000063', at: at(2) })
    const off = ending({ caseId: other.id, visitId: visit.id, how: 'left off' }, { at: at(3) })
    expect(viewOf(team(other, visit, off, proven, ending())).missing).toEqual([noNotice])
  })

  test('goes on once the notice is written late, and lifted', () => {
    const written = late(13)
    expect(standing(opened, endedOff, written)).toBe('left off')
    expect(viewOf(team(opened, endedOff, written)).missing).toEqual([])
    expect(standing(opened, endedOff, written, lifting(written))).toBe('being worked on')
    expect(standing(proven, endedOff, written, lifting(written), second, endedLater)).toBe(
      'repaired and proven',
    )
    expect(isLeftOff(team(opened, endedOff, written, lifting(written)), ids.furnace)).toBe(false)
  })

  test('is not let go by a notice that was lifted before it ended, though it names that one', () => {
    const before = notice({}, { at: at(12, '09:10') })
    const up = lifting(before, { at: at(12, '10:00') })
    expect(standing(opened, before, up, endedOff)).toBe('left off')
    expect(standing(opened, before, up, ending({ how: 'left off', noticeId: before.id }))).toBe('left off')
  })

  test('nor by a notice of an earlier winter', () => {
    const before = notice({ caseId: undefined }, { at: at(2) })
    expect(standing(opened, before, lifting(before, { at: at(20) }), endedOff)).toBe('left off')
  })

  test('nor by withdrawing its case; only by withdrawing the ending', () => {
    expect(isLeftOff(team(opened, endedOff, withdrawn(opened[0]!, at(16))), ids.furnace)).toBe(true)
    expect(isLeftOff(team(opened, endedOff, withdrawn(endedOff, at(16))), ids.furnace)).toBe(false)
  })

  test('disagrees with another ending of the visit until one is withdrawn', () => {
    const other = ending({ how: 'repair declined', declinedBecause: 'Too dear' })
    expect(standing(opened, endedOff, other)).toBe('endings disagree')
    expect(isLeftOff(team(opened, endedOff, other), ids.furnace)).toBe(true)
  })
})

test('a furnace with no ending and no notice is not left off', () => {
  expect(isLeftOff(team(opened), ids.furnace)).toBe(false)
  expect(noticeOfEnding([], { noticeId: undefined, visitAt: undefined })).toBeUndefined()
})

test('while the visit goes on, a notice that was lifted is none that it can end under', () => {
  const file = team(opened, notice({}, { at: at(12, '09:10') }))
  const notices = Object.freeze(viewOf(file).file.notices)
  const asked = { noticeId: undefined, visitAt: opened[1]!.saidAt }
  expect(noticeOfEnding(notices, asked)?.entry.body.caseId).toBe(ofVisit.caseId)
  const lifted = notices.map((one) => ({ ...one, lifting: { ...one.entry, body: {} as never } }))
  expect(noticeOfEnding(lifted, asked)).toBeUndefined()
})
