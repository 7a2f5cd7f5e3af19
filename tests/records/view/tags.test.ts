import { describe, expect, test } from 'vitest'
import { tagStanding, tagsOn } from '@/lib/records/view/tags'
import { at, ids, said, team, withdrawn } from './case/team'

const code = '0123456789A2'
const otherFurnace = '01940000-0000-7000-8000-0000000000a0'
const second = said(
  'furnace',
  { siteLabel: 'Weir Lane 4', model: 'LF2', fuel: 'natural gas' },
  { id: otherFurnace },
)
const stuck = (furnaceId: string, day: number) => said('tag', { code, furnaceId }, { at: at(day) })

describe('tagStanding(file, code)', () => {
  test('a tag that nobody has stuck on yet is on none', () => {
    expect(tagStanding(team(), code)).toEqual({ is: 'on none yet' })
  })

  test('leads to its furnace, once however often it was said, and through a furnace that was joined', () => {
    const join = said('same as', { kept: ids.furnace, duplicate: otherFurnace, reason: 'Entered twice.' })
    const file = team(second, stuck(ids.furnace, 3), stuck(otherFurnace, 4), join)
    expect(tagStanding(file, code)).toMatchObject({ is: 'on a furnace', furnace: { id: ids.furnace } })
  })

  test('says that two furnaces are named, and chooses neither', () => {
    const standing = tagStanding(team(second, stuck(ids.furnace, 3), stuck(otherFurnace, 4)), code)
    expect(standing).toMatchObject({
      is: 'on two furnaces',
      each: [{ furnace: { id: ids.furnace } }, { furnace: { id: otherFurnace } }],
    })
  })

  test('a withdrawn tag leads nowhere, and says so; stuck on again, it leads to where it is now', () => {
    const first = stuck(ids.furnace, 3)
    const gone = [second, first, withdrawn(first)]
    expect(tagStanding(team(...gone), code)).toMatchObject({ is: 'withdrawn', tag: { id: first.id } })
    expect(tagStanding(team(...gone, stuck(otherFurnace, 6)), code)).toMatchObject({
      is: 'on a furnace',
      furnace: { id: otherFurnace },
    })
  })
})

test('tagsOn(file, furnaceId) gives each tag once, without those that were withdrawn', () => {
  const [one, again, lost] = [
    stuck(ids.furnace, 3),
    stuck(ids.furnace, 4),
    said('tag', { code: 'AAAAAAAAAAA3', furnaceId: ids.furnace }),
  ]
  expect(tagsOn(team(one, again, lost, withdrawn(lost)), ids.furnace).map(({ id }) => id)).toEqual([one.id])
})
