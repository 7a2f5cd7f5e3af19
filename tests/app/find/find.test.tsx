import { act, fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { FindScreen } from '@/app/find/FindScreen'
import { marked } from '@/app/find/marked'
import { remember } from '@/app/find/recentLookUps'
import { resultWords } from '@/app/find/resultWords'
import { groupedTagCode, makeTagCode } from '@/lib/core/tag'
import { setpointOf } from '@/lib/records/view/setpoint'
import { cases, someCases } from '../cases/list/someCases'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, ids, spokenAnswer } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
vi.mock('@/lib/records/view/setpoint', { spy: true })

const open = async (typed = '', records = disputedRecords, drafts = {}) => {
  openAt(typed === '' ? '/' : `/?q=${encodeURIComponent(typed)}`)
  const device = fakeDevice({ records, drafts })
  await act(async () => {
    renderOn(device, <FindScreen />)
  })
  // They come a moment later.
  await act(async () => void (await import('@/app/find/TodaysFurnaces')))
  return device
}
const openRendered = async (typed: string, records: typeof disputedRecords) => {
  openAt(`/?q=${encodeURIComponent(typed)}`)
  return act(async () => renderOn(fakeDevice({ records }), <FindScreen />))
}
const tagCode = makeTagCode([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
/** A general-purpose switch whose number is one character off that of the low-fire switch. */
const nearPart = held([
  [
    '01920000-0000-7000-8000-0000000000e1',
    'part',
    { ...disputedRecords.find(({ kind }) => kind === 'part')!.body, positionIds: [], partNumber: 'OM-7734' },
  ],
]).map((record) => ({ ...record, seq: 79 }))
const results = () => within(screen.getByRole('list', { name: 'Results' })).getAllByRole('link')
const type = (text: string) => fireEvent.change(screen.getByRole('searchbox'), { target: { value: text } })

describe('FindScreen', () => {
  test('is one field that is ready to type', async () => {
    await open()
    expect(document.activeElement).toBe(screen.getByRole('searchbox'))
    expect(screen.getByRole('searchbox').getAttribute('autocorrect')).toBe('off')
  })

  test('works no rating out again while something changes on the device that is not on file', async () => {
    const device = await open('om7731')
    expect(results().length).toBeGreaterThan(0)
    const before = vi.mocked(setpointOf).mock.calls.length
    expect(before).toBeGreaterThan(0)
    const picture = { blob: new Blob(['x']), sha256: 'a'.repeat(64), width: 1, height: 1, bytes: 1 }
    await act(async () => void (await device.keepPicture({ ...picture, mediaType: 'image/jpeg' })))
    expect(device.state().pictures).toHaveLength(1)
    expect(vi.mocked(setpointOf).mock.calls).toHaveLength(before)
  })

  test('before anything is typed it lists what one has asked, open and answered, each with its way', async () => {
    const [open1, answered, answer] = ['c1', 'c2', 'c3'].map(
      (end) => `01920000-0000-7000-8000-0000000000${end}`,
    ) as [string, string, string]
    vi.useFakeTimers({ toFake: ['Date'], now: Date.parse('2026-02-02T08:00:00.000Z') })
    const asked = held([
      [
        open1,
        'rating request',
        { positionId: ids.high, printed: 'nothing', needs: [] },
        '2026-02-01T09:00:00.000Z',
      ],
      [
        answered,
        'rating request',
        { positionId: ids.low, furnaceId: ids.furnace, printed: 'nothing', needs: [] },
      ],
      [answer, 'report', spokenAnswer(answered)],
    ]).map((record, place) => ({ ...record, seq: 60 + place }))
    await open('', [...disputedRecords, ...asked])
    const own = screen.getByRole('navigation', { name: 'What you asked' })
    const lines = within(own).getAllByRole('listitem')
    expect(lines.map((line) => line.textContent)).toEqual([
      expect.stringMatching(/^High fire.*not answered yet$/),
      expect.stringMatching(/^Low fire.*answered by Ines Talvik/),
    ])
    expect(within(lines[1]!).getByRole('link').getAttribute('href')).toBe(
      `/setpoint?position=${ids.low}&furnace=${ids.furnace}`,
    )
    vi.useRealTimers()
  })

  test.each([
    ['a part number without its dash', 'om7731', /^Low fire/],
    ['look-alike letters', '0M-77EI', /^Low fire/],
    ['a whole model number where the file holds a pattern', 'LF2-080-B', /./],
    ['maker and switch', 'orrinmoor high', /^High fire/],
    ['the site', 'mill row', /^Mill Row 12/],
    ['the serial of a furnace, with look-alikes', 's22O4 ll8', /^Mill Row 12/],
    ['the model of a furnace', 'LF2-060-A', /^Tarn Gate 3/],
  ])('finds by %s', async (_, typed, first) => {
    await open()
    type(typed)
    expect(results()[0]!.textContent).toMatch(first)
  })

  test('a result names the standing of each point with its date, and no number', async () => {
    await open('om7731')
    const result = results()[0]!
    expect(result.textContent).toMatch(/Closes: In dispute \d+ Jan 2026/)
    expect(result.textContent).toContain('Opens: Not on file')
    expect(result.textContent).not.toMatch(/0\.58|144/)
    expect(result.getAttribute('href')).toBe(`/setpoint?position=${ids.low}`)
  })

  test('a general-purpose switch is known for what it is', async () => {
    await open('GP-ADJ-1')
    expect(results()[0]!.textContent).toContain('never a repair')
  })

  test('says what was not found, and offers to ask or to add', async () => {
    await open('QQ-999-Z')
    expect(screen.getByText('Nothing on file matches “QQ-999-Z”')).toBeDefined()
    expect(screen.getByRole('link', { name: 'Ask for this rating' }).getAttribute('href')).toBe(
      '/ask?model=QQ-999-Z',
    )
  })

  test('a number on file stands apart from those that are only near it', async () => {
    await open('OM-7731', [...disputedRecords, ...nearPart])
    expect(screen.getByRole('status').textContent).toBe('1 found')
    expect(results()).toHaveLength(1)
    expect(screen.getByRole('heading', { name: 'Something else, near it' })).toBeDefined()
    const near = within(screen.getByRole('list', { name: 'Something else, near it' }))
    expect(near.getByRole('link').textContent).toContain('OM-7734')
  })

  const tagged = (end: string, furnaceId: string) =>
    held([[`01920000-0000-7000-8000-0000000000${end}`, 'tag', { code: tagCode, furnaceId }]]).map(
      (record) => ({
        ...record,
        seq: 80 + Number(end),
      }),
    )

  test('the code of a furnace’s tag finds its furnace, however it is typed', async () => {
    for (const typed of [
      groupedTagCode(tagCode),
      tagCode.toLowerCase(),
      `https://team.example/t?c=${tagCode}`,
    ]) {
      const { unmount } = await openRendered(typed, [...disputedRecords, ...tagged('91', ids.furnace)])
      expect(screen.getByRole('link', { name: /by its tag/ }).getAttribute('href')).toBe(
        `/furnace?id=${ids.furnace}`,
      )
      unmount()
    }
  })

  test('the code of a tag that is on no furnace, or on two, leads to the tag', async () => {
    const onTwo = [...tagged('91', ids.furnace), ...tagged('92', ids.bareFurnace)]
    for (const records of [disputedRecords, [...disputedRecords, ...onTwo]]) {
      const { unmount } = await openRendered(tagCode, records)
      expect(screen.getByText(/^That looks like a furnace tag/)).toBeDefined()
      expect(screen.getByRole('link', { name: `open ${groupedTagCode(tagCode)}` }).getAttribute('href')).toBe(
        `/t?c=${tagCode}`,
      )
      unmount()
    }
  })

  test('a misread code of a tag is said to be one, and a part number is not', async () => {
    await open(`${tagCode.slice(0, 11)}${tagCode.endsWith('0') ? '1' : '0'}`)
    expect(screen.getByText(/^If this is a furnace tag:/)).toBeDefined()
    type('OM-7731')
    expect(screen.queryByText(/furnace tag/)).toBeNull()
  })

  test('a near number is never passed for the one that was typed', async () => {
    await open('OM-7751')
    expect(screen.getByRole('status').textContent).toMatch(/^Not on file as typed/)
    expect(screen.getByRole('link', { name: 'Ask for this rating' }).getAttribute('href')).toBe(
      '/ask?model=OM-7751',
    )
    type('OM-7731')
    expect(screen.getByRole('status').textContent).toBe('1 found')
  })

  test('keeps what was typed in the address, so that reload and a shared link lead here again', async () => {
    await open()
    type('om7731')
    expect(window.location.search).toBe('?q=om7731')
  })

  test('an empty file says where to begin', async () => {
    await open('', [])
    expect(screen.getByText('No equipment on file yet')).toBeDefined()
  })

  test('before anything is typed today’s furnaces stand first, each with its open case and its setpoints', async () => {
    await open('', someCases, {
      'recent look-ups': [
        { key: ids.low, words: 'Low fire, Larkfell 2', href: `/setpoint?position=${ids.low}` },
      ],
    })
    const today = screen.getByRole('navigation', { name: 'Today’s furnaces, and those still open' })
    const [first, second] = within(today).getAllByRole('listitem')
    expect(first!.textContent).toContain('Tarn Gate 3 LF2-060-A')
    const opens = within(first!).getByRole('link', { name: /^Case: No heat, three blinks/ })
    expect(opens.textContent).toContain('being worked on, visit 25 Jan 2026')
    expect(opens.getAttribute('href')).toBe(`/case?id=${cases.begun}`)
    expect(within(first!).getByRole('link', { name: 'Setpoints, Tarn Gate 3' }).getAttribute('href')).toBe(
      `/furnace?id=${ids.bareFurnace}`,
    )
    expect(second!.textContent).toContain('Mill Row 12')
    const lately = screen.getByRole('navigation', { name: 'Looked up lately' })
    expect(today.compareDocumentPosition(lately)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
    type('om7731')
    expect(screen.queryByRole('navigation', { name: 'Today’s furnaces, and those still open' })).toBeNull()
  })

  test('without an open case nothing stands above what was looked up', async () => {
    await open()
    expect(screen.queryByRole('navigation', { name: 'Today’s furnaces, and those still open' })).toBeNull()
    expect(screen.getByText(/^Type any part of it/)).toBeDefined()
  })

  test('lists what was looked up lately', async () => {
    await open('', disputedRecords, {
      'recent look-ups': [
        { key: ids.low, words: 'Low fire, Larkfell 2', href: `/setpoint?position=${ids.low}` },
      ],
    })
    expect(screen.getByRole('link', { name: 'Low fire, Larkfell 2' })).toBeDefined()
  })
})

describe('resultWords(matches, listed)', () => {
  const matches = (count: number, score: number) =>
    Array.from({ length: count }, (_, index) => ({ key: `${index}`, score, text: 0, matched: [] }))
  test('says how many there are, and that more were left out', () => {
    expect(resultWords([], 12)).toBe('Nothing found')
    expect(resultWords(matches(12, 0.2), 12)).toBe('12 found')
    expect(resultWords(matches(13, 0.2), 12)).toBe('The first 12. Type more to narrow it down.')
  })
  test('says when nothing is what was typed', () => {
    expect(resultWords(matches(2, 0.4), 12)).toMatch(/^Not on file as typed/)
  })
})

describe('remember(recent, look)', () => {
  const look = (key: string) => ({ key, words: key, href: `/${key}` })
  test('puts the newest first, once, and keeps eight', () => {
    const many = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'].reduce(
      (recent, key) => remember(recent, look(key)),
      [] as ReturnType<typeof look>[],
    )
    expect(many.map(({ key }) => key)).toEqual(['i', 'h', 'g', 'f', 'e', 'd', 'c', 'b'])
    expect(remember(many, look('d')).map(({ key }) => key)).toEqual(['d', 'i', 'h', 'g', 'f', 'e', 'c', 'b'])
  })
})

describe('marked(text, matched)', () => {
  test('cuts a text into found and other pieces that make the text again', () => {
    const pieces = marked('OM-7731-K', [
      [0, 2],
      [3, 7],
    ])
    expect(pieces.map((piece) => piece.text).join('')).toBe('OM-7731-K')
    expect(pieces.filter((piece) => piece.found).map((piece) => piece.text)).toEqual(['OM', '7731'])
  })
})
