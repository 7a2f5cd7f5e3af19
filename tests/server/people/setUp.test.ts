import { expect, test } from 'vitest'
import { GET as isOpen, POST as setUp } from '@/app/api/set-up/route'
import { personOf } from '@/lib/server/people/session'
import { makeSetUpCode } from '@/lib/server/people/setUp'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, read, send, withFreshData } from './team'

withFreshData()

const newCode = (now = new Date()) => makeSetUpCode(store().database, now)!
const setUpWith = (code: string, from = '192.0.2.1') =>
  setUp(send('/api/set-up', { from, body: { code, name: 'Mara Otell', password } }))
const open = async () => ((await isOpen().json()) as { value: { open: boolean } }).value.open

test('the code from the terminal makes the first manager, and signs them in', async () => {
  expect(await open()).toBe(true)
  const answer = await setUpWith(newCode())
  expect(answer.status).toBe(200)
  expect(await personOf(read('/', cookiesOf(answer)))).toMatchObject({ name: 'Mara Otell', role: 'manager' })
})

test('after that, set-up is closed for good: no code, and an old one is no use', async () => {
  const code = newCode()
  await setUpWith(code)
  expect(await open()).toBe(false)
  expect(makeSetUpCode(store().database, new Date())).toBeUndefined()
  const again = await setUpWith(code)
  expect(again.status).toBe(410)
  expect(await again.json()).toMatchObject({ problem: { code: 'set-up-is-over' } })
})

test('two who send the code at once make one manager', async () => {
  const code = newCode()
  const statuses = (await Promise.all([setUpWith(code), setUpWith(code)])).map(({ status }) => status)
  expect(statuses.filter((status) => status === 200)).toHaveLength(1)
  expect(await store().prisma.person.count()).toBe(1)
})

test('a server with people in it never offers set-up', async () => {
  const code = newCode()
  await add('Jonas Merrill', 'technician')
  expect((await setUpWith(code)).status).toBe(410)
})

test('a wrong code is refused, and wrong codes are limited from one address and from all together', async () => {
  const code = newCode()
  for (let i = 0; i < 20; i++)
    expect((await setUpWith('AAAAA-AAAAA-AAAAA-AAAAA', `203.0.113.${i}`)).status).toBe(400)
  const waiting = await setUpWith(code)
  expect(waiting.status).toBe(429)
  expect(waiting.headers.get('retry-after')).toMatch(/^[12]$/)
  expect(await open()).toBe(true)
})

test('a code holds until the next start, or for a day', async () => {
  const [first, second] = [newCode(), newCode()]
  expect((await setUpWith(first)).status).toBe(400)
  const yesterday = newCode(new Date(Date.now() - 25 * 60 * 60 * 1000))
  expect((await setUpWith(second)).status).toBe(400)
  expect((await setUpWith(yesterday)).status).toBe(400)
  expect((await setUpWith(newCode())).status).toBe(200)
})

test('set-up from a page of another origin is refused', async () => {
  const body = { code: newCode(), name: 'Mara Otell', password }
  expect((await setUp(send('/api/set-up', { origin: 'https://elsewhere.example', body }))).status).toBe(403)
})
