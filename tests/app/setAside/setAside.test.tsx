import { screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { beforeEach, expect, test, vi } from 'vitest'
import { SetAsideScreen } from '@/app/setAside/SetAsideScreen'
import { fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { press } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

const id = (end: string) => `01930000-0000-7000-8000-${end.padStart(12, '0')}`
const item = (end: string, name: string, more = {}) => ({
  record: {
    id: id(end),
    kind: 'maker',
    version: 1,
    body: { name },
    saidAt: '2026-02-01T08:00:00.000Z',
    author: technician.id,
    device: 'd1',
  },
  personId: technician.id,
  device: 'd1',
  receivedAt: '2026-02-03T08:00:00.000Z',
  clockShiftMs: 0,
  ...more,
})
const manager = { id: 'p9', name: 'Mara Otell', role: 'manager' } as const

let list: unknown[]
let admitted: unknown
const posts: [string, unknown][] = []
beforeEach(() => {
  posts.length = 0
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    if (init?.method !== 'POST') return Response.json({ ok: true, value: list })
    posts.push([path, JSON.parse(String(init.body))])
    return Response.json({ ok: true, value: path.endsWith('admit') ? admitted : true })
  })
  return () => vi.unstubAllGlobals()
})
const open = (me: typeof manager | typeof technician = manager) =>
  renderOn(fakeDevice({ me }), <SetAsideScreen />)

test('each record is shown whole, with who said it, and is admitted alone or with all, in their order', async () => {
  list = [item('1', 'Orrinmoor'), item('2', 'Tessenby')]
  admitted = { answers: [{ id: id('1'), outcome: 'stored', seq: 7 }] }
  open()
  const first = await screen.findByRole('article', { name: 'Maker: Orrinmoor' })
  expect(first.textContent).toContain('Ines Talvik')
  expect(await accessibilityFaults(document.body)).toEqual([])
  await userEvent.click(within(first).getByRole('button', { name: 'Admit it to the log' }))
  await press('Admit all 2, in their order')
  expect(posts).toEqual([
    ['/api/set-aside/admit', { records: [id('1')] }],
    ['/api/set-aside/admit', { records: [id('1'), id('2')] }],
  ])
})

test('what the log does not take stays, with the reason beside it', async () => {
  list = [item('1', 'Orrinmoor')]
  admitted = {
    answers: [{ id: id('1'), outcome: 'refused', rule: 'r', sentence: 'There is a maker of that name.' }],
  }
  open()
  await screen.findByRole('article', { name: 'Maker: Orrinmoor' })
  await press('Admit it to the log')
  expect((await screen.findByRole('article', { name: 'Maker: Orrinmoor' })).textContent).toContain(
    'There is a maker of that name.',
  )
})

test('keeping a record out asks why; one that was kept out says by whom, and can be admitted after all', async () => {
  list = [
    item('1', 'Orrinmoor'),
    item('2', 'Tessenby', {
      refused: { by: 'p9', at: '2026-02-04T08:00:00.000Z', reason: 'Said by a stranger.' },
    }),
  ]
  open()
  const refused = await screen.findByRole('article', { name: 'Maker: Tessenby' })
  expect(refused.textContent).toContain('Said by a stranger.')
  expect(within(refused).queryByRole('button', { name: 'Keep it out' })).toBeNull()
  await press('Keep it out')
  await press('Keep it out')
  expect(posts).toEqual([])
  await userEvent.type(screen.getByLabelText('Why it stays out of the log'), 'After the phone was lost')
  await press('Keep it out')
  expect(posts).toEqual([
    ['/api/set-aside/refuse', { records: [id('1')], reason: 'After the phone was lost' }],
  ])
})

test('a photo whose picture was damaged on the device says so in the picture’s place', async () => {
  const body = {
    sha256: 'a'.repeat(64),
    mediaType: 'image/jpeg',
    width: 9,
    height: 9,
    bytes: 9,
    shows: 'other',
  }
  const photo = (end: string, more = {}) => {
    const whole = item(end, '', more)
    return { ...whole, record: { ...whole.record, kind: 'photo', body } }
  }
  list = [photo('1', { pictureLost: true }), photo('2')]
  open()
  const [lost, here] = await screen.findAllByRole('article')
  expect(lost!.textContent).toContain('Its picture is lost.')
  expect(within(lost!).queryByRole('img')).toBeNull()
  expect(within(here!).getByRole('img')).toBeTruthy()
  expect(here!.textContent).not.toContain('lost')
})

test('nobody but a manager sees any of it', async () => {
  list = [item('1', 'Orrinmoor')]
  open(technician)
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Only a manager sees what is set aside')
  expect(screen.queryByRole('article')).toBeNull()
})
