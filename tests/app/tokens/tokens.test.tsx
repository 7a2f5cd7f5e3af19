import { render, screen, within } from '@testing-library/react'
import { afterEach, expect, test, vi } from 'vitest'
import { ApiHelp } from '@/app/tokens/ApiHelp'
import { TokensScreen } from '@/app/tokens/TokensScreen'
import type { Person } from '@/lib/device/transport'
import { operations } from '@/lib/server/api/operations'
import { fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { choose, fill, press } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

afterEach(() => vi.unstubAllGlobals())

const manager: Person = { id: 'person-3', name: 'Oda Feldt', role: 'manager' }
const working = {
  id: 't-1',
  name: 'Office scheduler',
  role: 'dispatcher',
  madeBy: 'Oda Feldt',
  madeAt: '2026-03-01T09:00:00.000Z',
  expiresAt: '2026-07-01T00:00:00.000Z',
  lastUsedAt: '2026-03-09T10:30:00.000Z',
  state: 'works',
}
const ended = { ...working, id: 't-2', name: 'Parts counter', lastUsedAt: null, state: 'was ended' }

/** A server with these tokens; what is posted to it is remembered, and answered as told. */
function serverWith(tokens: object[], answers: Record<string, object> = {}) {
  const posted: [path: string, body: unknown][] = []
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    if (init?.method !== 'POST') return Response.json({ ok: true, value: tokens })
    posted.push([path, JSON.parse(String(init.body))])
    return Response.json(answers[path] ?? { ok: true, value: true })
  })
  return posted
}
const open = (me = manager) => renderOn(fakeDevice({ me }), <TokensScreen />)

test('each token is listed with its role, its end, its maker and its last use; one that is over can’t be ended', async () => {
  serverWith([working, ended])
  const { container } = open()
  const one = await screen.findByRole('article', { name: 'Office scheduler' })
  expect(one.textContent).toContain('dispatcher, works until 30 Jun 2026')
  expect(one.textContent).toContain('Made by Oda Feldt, 1 Mar 2026, 09:00. Last used 9 Mar 2026, 10:30.')
  const other = screen.getByRole('article', { name: 'Parts counter' })
  expect(other.textContent).toContain('was ended')
  expect(other.textContent).toContain('Never used.')
  expect(within(other).queryByRole('button')).toBeNull()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a token is made with a name, a role and a last day, and shown once', async () => {
  const token = `inchwater_${'a'.repeat(43)}`
  const posted = serverWith([], {
    '/api/tokens': { ok: true, value: { token, expiresAt: working.expiresAt } },
  })
  open()
  await screen.findByText('No program has a token')
  fill('Name of the program, as the team will see it', 'Office scheduler')
  choose('It may do what this role may', 'Technician')
  fill('Last day on which it works', '2026-06-30')
  await press('Make the token')
  expect(posted).toEqual([
    ['/api/tokens', { name: 'Office scheduler', role: 'technician', until: '2026-06-30' }],
  ])
  expect(await screen.findByDisplayValue(token)).toBeDefined()
  expect(screen.getByRole('article', { name: 'The token of Office scheduler' })).toBeDefined()
})

test('what the server refuses is said, and nothing that was typed is lost', async () => {
  const problem = { code: 'name-taken', message: 'Somebody is called Oda here already.' }
  serverWith([], { '/api/tokens': { ok: false, problem } })
  open()
  await screen.findByText('No program has a token')
  fill('Name of the program, as the team will see it', 'Oda')
  await press('Make the token')
  expect(screen.getByRole('alert').textContent).toBe(problem.message)
  expect(screen.getByLabelText<HTMLInputElement>(/^Name of the program/).value).toBe('Oda')
})

test('a token is ended by its button', async () => {
  const posted = serverWith([working])
  open()
  await screen.findByRole('article', { name: 'Office scheduler' })
  await press('End this token of Office scheduler')
  expect(posted).toEqual([['/api/tokens/t-1/end', {}]])
})

test('tokens are for managers; nobody else’s screen asks for them', () => {
  const fetched = vi.fn()
  vi.stubGlobal('fetch', fetched)
  open(technician)
  expect(screen.getByRole('heading', { name: 'Tokens are for managers' })).toBeDefined()
  expect(screen.queryByRole('button')).toBeNull()
  expect(fetched).not.toHaveBeenCalled()
})

test('the readable page says everything that a program can ask, field by field', async () => {
  const { container } = render(<ApiHelp />)
  for (const { summary, method, path, query, body } of operations) {
    const sheet = screen.getByRole('article', { name: summary })
    expect(sheet.textContent).toContain(`${method} ${path}`)
    for (const field of Object.keys({ ...query?.shape, ...body?.shape }))
      expect(within(sheet).getByText(field, { selector: 'dt code' })).toBeDefined()
  }
  expect(screen.getByRole('article', { name: /^File a case/ }).textContent).toContain(
    'one of: proving circuit, something else',
  )
  expect(await accessibilityFaults(container)).toEqual([])
})
