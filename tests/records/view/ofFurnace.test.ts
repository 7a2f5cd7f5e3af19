import { describe, expect, test } from 'vitest'
import { ofFurnace } from '@/lib/records/view/ofFurnace'
import { at, ids, notice, said, team, withdrawn } from './case/team'

const twin = '01940000-0000-7000-8000-0000000000a0'
const twinRecord = said('furnace', { siteLabel: 'Mill Row', model: 'LF2', fuel: 'natural gas' }, { id: twin })
const join = said('same as', { kept: ids.furnace, duplicate: twin, reason: 'Entered twice.' })

describe('ofFurnace(file, entries, furnaceId)', () => {
  const late = notice({}, { at: at(14) })
  const early = notice({}, { at: at(13) })
  const there = notice({ furnaceId: twin }, { at: at(12) })

  test('gives those of the furnace that count, oldest first', () => {
    const file = team(twinRecord, late, there, early)
    expect(ofFurnace(file, file.shutDownNotices, ids.furnace).map(({ id }) => id)).toEqual([
      early.id,
      late.id,
    ])
    expect(ofFurnace(file, file.shutDownNotices, ids.gauge)).toEqual([])
  })

  test('leaves withdrawn ones out, and follows a furnace to the one it was joined to', () => {
    const file = team(twinRecord, late, there, early, withdrawn(early), join)
    for (const id of [ids.furnace, twin])
      expect(ofFurnace(file, file.shutDownNotices, id).map((entry) => entry.id)).toEqual([there.id, late.id])
  })

  test('leaves out what names no furnace', () => {
    const none = said('found fitted', {
      model: 'LF2-080-B',
      printed: 'GP',
      what: 'not known',
      fittedWhen: 'not known',
      fittedBy: 'not known',
      foundOn: '2026-01-12',
    })
    const file = team(none)
    expect(file.foundFitted.size).toBe(1)
    expect(ofFurnace(file, file.foundFitted, ids.furnace)).toEqual([])
  })
})
