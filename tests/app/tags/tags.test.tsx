import { act, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { FurnaceScreen } from '@/app/furnace/FurnaceScreen'
import { TagScreen } from '@/app/tags/TagScreen'
import { TagSheetsScreen } from '@/app/tags/TagSheetsScreen'
import { groupedTagCode, isTagCode } from '@/lib/core/tag'
import { fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const code = '0123456789A2'
const [first, second, gone] = ['f0', 'f1', 'f2'].map((end) => `01920000-0000-7000-8000-0000000000${end}`)
const manager = { id: 'person-3', name: 'Mara Otell', role: 'manager' } as const
const on = (id: string, furnaceId: string) => [id, 'tag', { code, furnaceId }] as const
const after = (rows: Parameters<typeof held>[0]) =>
  held(rows).map((record, at) => ({ ...record, seq: equipmentRecords.length + at + 1 }))

const openTag = async (query: string, rows: Parameters<typeof held>[0] = []) => {
  openAt(`/t?${query}`)
  const device = fakeDevice({ records: [...equipmentRecords, ...after(rows)] })
  const drawn = await act(async () => renderOn(device, <TagScreen />))
  return { device, ...drawn }
}

describe('TagScreen', () => {
  test('leads at once to the furnace that the tag is on', async () => {
    await openTag(`c=${code}`, [[...on(first!, ids.furnace)]])
    expect(wentTo()).toEqual([`/furnace?id=${ids.furnace}`])
  })

  test('of a tag on no furnace asks which, and records it', async () => {
    const { device, container } = await openTag(`c=${code}`)
    expect(screen.getByText('0123-4567-89A2')).toBeDefined()
    expect(await accessibilityFaults(container)).toEqual([])
    await press('Record where it is')
    expect(describedBy(screen.getByRole('group', { name: 'Which furnace is this on?' }))).toContain(
      'Choose the',
    )
    expect(device.added).toEqual([])
    choose('Which furnace is this on?', /^Tarn Gate 3/)
    await press('Record: it is on Tarn Gate 3')
    expect(device.added).toMatchObject([{ kind: 'tag', body: { code, furnaceId: ids.bareFurnace } }])
    expect(wentTo()).toContain(`/furnace?id=${ids.bareFurnace}`)
  })

  test('the furnace that it was scanned at is chosen already, and a waiting form is told', async () => {
    const { device } = await openTag(`c=${code}&furnace=${ids.bareFurnace}&then=/cases/new`)
    await press('Record: it is on Tarn Gate 3')
    expect(device.added).toHaveLength(1)
    expect(wentTo()).toContain(`/cases/new?on=${ids.bareFurnace}`)
  })

  test('a withdrawn tag leads nowhere, says why, and can be stuck on again', async () => {
    await openTag(`c=${code}`, [
      [...on(first!, ids.furnace)],
      [gone!, 'withdrawal', { record: first, reason: 'Fell off' }],
    ])
    expect(wentTo()).toEqual([])
    expect(document.body.textContent).toContain('It was withdrawn: Fell off.')
    choose('Which furnace is this on?', /^Mill Row 12/)
    await press('Record: it is on Mill Row 12')
    expect(wentTo()).toContain(`/furnace?id=${ids.furnace}`)
  })

  test('a tag on two furnaces leads to neither: somebody has to withdraw one', async () => {
    await openTag(`c=${code}`, [[...on(first!, ids.furnace)], [...on(second!, ids.bareFurnace)]])
    expect(wentTo()).toEqual([])
    expect(
      screen.getByRole('link', { name: 'Withdraw that it is on Tarn Gate 3' }).getAttribute('href'),
    ).toBe(`/withdraw?record=${second}`)
    expect(screen.queryByRole('group', { name: 'Which furnace is this on?' })).toBeNull()
  })

  test('anything that is no code of a tag is said to be none', async () => {
    await openTag('c=0123456789A3')
    expect(document.body.textContent).toContain('This is no furnace tag')
    expect(document.body.textContent).toContain('misread')
  })
})

const openSheets = async (
  query = '',
  me: typeof manager | typeof technician = manager,
  rows: Parameters<typeof held>[0] = [],
) => {
  openAt(`/tags${query}`)
  const device = fakeDevice({ records: [...equipmentRecords, ...after(rows)], me })
  const drawn = await act(async () => renderOn(device, <TagSheetsScreen />))
  return { device, ...drawn }
}
const printed = () =>
  within(screen.getByRole('list', { name: 'Tags to print' }))
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent ?? '')

describe('TagSheetsScreen', () => {
  test('only a manager prints tags; anybody else is told what to do', async () => {
    await openSheets('', technician)
    expect(screen.queryByRole('button')).toBeNull()
    expect(document.body.textContent).toContain('Ask a manager')
  })

  test('blank tags are only printed: each has a code of its own, and nothing is recorded', async () => {
    const { device, container } = await openSheets()
    fill('How many?', '12')
    await press('Make 12 tags')
    expect(new Set(printed()).size).toBe(12)
    for (const text of printed())
      expect(isTagCode(text.replace('Furnace tag', '').replaceAll('-', ''))).toBe(true)
    expect(device.added).toEqual([])
    expect(await accessibilityFaults(container)).toEqual([])
    const print = vi.spyOn(window, 'print').mockReturnValue()
    await press('Print')
    expect(print).toHaveBeenCalledOnce()
  })

  test.each(['0', '193', '2.5', 'ten', ''])('%j is no number of tags', async (count) => {
    await openSheets()
    fill('How many?', count)
    await press('Make the tags')
    expect(describedBy(screen.getByLabelText('How many?'))).toContain('from 1 to 192')
    expect(screen.queryByRole('list', { name: 'Tags to print' })).toBeNull()
  })

  test('tags for furnaces are recorded as they are made; the site is on them only when asked for', async () => {
    const { device } = await openSheets('', manager, [[...on(first!, ids.furnace)]])
    choose('Which tags?', /^Tags for furnaces/)
    await press('Make 1 tag')
    expect(device.added).toMatchObject([{ kind: 'tag', body: { furnaceId: ids.bareFurnace } }])
    expect(printed()).toHaveLength(1)
    expect(printed()[0]).not.toContain('Tarn Gate')
    tick('Only furnaces that have no tag yet')
    tick('Print the site on each tag')
    await press('Make 2 tags')
    // Those that have one get the same again, and nothing more is recorded.
    expect(device.added).toHaveLength(1)
    expect(printed()).toEqual([
      `Furnace tag${groupedTagCode(code)}Mill Row 12`,
      `Furnace tag${groupedTagCode(String(device.added[0]!.body.code))}Tarn Gate 3`,
    ])
  })

  test('one furnace can have its tag printed from its own page', async () => {
    const { device } = await openSheets(`?furnace=${ids.furnace}`)
    await press('Make 1 tag')
    expect(device.added).toMatchObject([{ kind: 'tag', body: { furnaceId: ids.furnace } }])
  })

  test('says that a tag for this machine’s own name leads no phone anywhere', async () => {
    await openSheets()
    expect(document.body.textContent).toContain('which no phone can open')
  })
})

test('a furnace’s page names its tags, how a lost one is taken back, and where another is scanned', async () => {
  openAt(`/furnace?id=${ids.furnace}`)
  const device = fakeDevice({
    records: [...equipmentRecords, ...after([[...on(first!, ids.furnace)]])],
    me: technician,
  })
  await act(async () => renderOn(device, <FurnaceScreen />))
  const tags = screen.getByRole('article', { name: 'Tags' })
  const links = within(tags)
    .getAllByRole('link')
    .map((link) => link.getAttribute('href'))
  expect(links).toEqual([`/withdraw?record=${first}`, `/scan?furnace=${ids.furnace}`])
})
