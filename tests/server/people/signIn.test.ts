import { statSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { GET as me } from '@/app/api/auth/me/route'
import { POST as changePassword } from '@/app/api/auth/password/route'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { POST as signOut } from '@/app/api/auth/sign-out/route'
import { POST as signOutEverywhere } from '@/app/api/auth/sign-out-everywhere/route'
import { changeActive } from '@/lib/server/people/changes'
import { createPerson } from '@/lib/server/people/createPerson'
import { personOf, personOfHeaders, requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, read, send, withFreshData } from './team'

withFreshData()

const signInAs = (name: string, typed = password, more: Parameters<typeof send>[1] = {}) =>
  signIn(send('/api/auth/sign-in', { ...more, body: { name, password: typed } }))

test('sign-in by name and password gives a session that tells who is asking', async () => {
  const id = await add('Ilse Quandt', 'dispatcher')
  const answer = await signInAs('Ilse Quandt')
  expect(answer.status).toBe(200)
  expect(await answer.json()).toEqual({ ok: true, value: { id, name: 'Ilse Quandt', role: 'dispatcher' } })
  expect(await personOf(read('/', cookiesOf(answer)))).toEqual({
    id,
    name: 'Ilse Quandt',
    role: 'dispatcher',
    sessionId: expect.any(String),
  })
  expect(await personOfHeaders(new Headers({ cookie: cookiesOf(answer) }))).toMatchObject({ id })
})

test('sign-in does not mind capitals and spaces', async () => {
  await add('Ilse O’Quandt', 'dispatcher')
  expect((await signInAs("  ilse   o'QUANDT ")).status).toBe(200)
})

test('nobody is signed in without a cookie, or with a made-up or altered one', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const cookie = cookiesOf(await signInAs('Ilse Quandt'))
  expect(await personOf(read('/'))).toBeUndefined()
  expect(await personOf(read('/', 'inchwater.session_token=made-up.signature'))).toBeUndefined()
  expect(await personOf(read('/', cookie.replace(/session_token=./, 'session_token=_')))).toBeUndefined()
})

test('a wrong password and an unknown name get the same answer', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const wrong = await signInAs('Ilse Quandt', 'not the password')
  const unknown = await signInAs('Nobody Here', 'not the password')
  expect([wrong.status, unknown.status]).toEqual([401, 401])
  expect(await wrong.text()).toBe(await unknown.text())
  expect(wrong.headers.getSetCookie()).toEqual([])
})

test('an unknown name takes about as long as a wrong password', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const fastestOf = async (name: string) => {
    const times: number[] = []
    for (let i = 0; i < 6; i++) {
      const begun = performance.now()
      await signInAs(name, 'not the password', { from: `192.0.2.${i}` })
      times.push(performance.now() - begun)
    }
    return Math.min(...times)
  }
  const [wrong, unknown] = [await fastestOf('Ilse Quandt'), await fastestOf('Nobody Here')]
  // Without a hash for the unknown name the quotient would be over five: see the hash's own cost in passwords.ts.
  expect(wrong / unknown).toBeLessThan(2.5)
  expect(unknown / wrong).toBeLessThan(2.5)
})

test('a form that is not filled in is told what is missing', async () => {
  const answer = await signIn(send('/api/auth/sign-in', { body: { name: '' } }))
  expect(answer.status).toBe(400)
  expect(await answer.json()).toMatchObject({ problem: { message: 'Type your name. Type your password.' } })
})

// Unicode: NFKC of U+FDFA is 18 characters (NormalizationTest.txt), lower case of U+0130 is two (SpecialCasing.txt).
test.each([
  ['x', 201],
  ['\u{FDFA}', 12],
  ['\u{0130}', 101],
])('a name that is too long once it is folded is told so: %s, %i times', async (letter, times) => {
  const answer = await signInAs(letter.repeat(times))
  expect(answer.status).toBe(400)
  expect(await answer.json()).toMatchObject({ problem: { message: 'That name is too long.' } })
  expect((await signInAs(letter.repeat(times - 1))).status).toBe(401)
})

test('sign-in from a page of another origin is refused', async () => {
  await add('Ilse Quandt', 'dispatcher')
  expect((await signInAs('Ilse Quandt', password, { origin: 'https://elsewhere.example' })).status).toBe(403)
})

test('over plain http the cookies are HttpOnly and SameSite; over https they are Secure too', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const plain = (await signInAs('Ilse Quandt')).headers.getSetCookie()
  const secure = (await signInAs('Ilse Quandt', password, { scheme: 'https' })).headers.getSetCookie()
  expect(plain).toHaveLength(2)
  for (const cookie of plain) expect(cookie).toMatch(/^inchwater\..*HttpOnly; SameSite=Lax$/)
  expect(secure[0]).toMatch(/^__Secure-inchwater\.session_token=/)
  expect(secure[1]).toMatch(/^__Host-inchwater\.device=/)
  for (const cookie of secure)
    for (const flag of ['; HttpOnly', '; SameSite=Lax', '; Secure', '; Path=/'])
      expect(cookie).toContain(flag)
})

test('a session made over https counts over https', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const cookie = cookiesOf(await signInAs('Ilse Quandt', password, { scheme: 'https' }))
  const request = new Request('https://localhost/', { headers: { cookie } })
  expect(await personOf(request)).toMatchObject({ name: 'Ilse Quandt' })
  expect(await personOfHeaders(new Headers({ cookie, 'x-forwarded-proto': 'https' }))).toMatchObject({
    name: 'Ilse Quandt',
  })
  expect(await personOf(read('/', cookie))).toBeUndefined()
})

test('sign-out ends the session on the server, not only in the browser', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const cookie = cookiesOf(await signInAs('Ilse Quandt'))
  const other = cookiesOf(await signInAs('Ilse Quandt'))
  const answer = await signOut(send('/api/auth/sign-out', { cookie }))
  expect(answer.headers.getSetCookie()[0]).toMatch(/^inchwater\.session_token=;.*Max-Age=0/)
  expect((await me(read('/api/auth/me', cookie))).status).toBe(401)
  expect((await me(read('/api/auth/me', other))).status).toBe(200)
})

test('sign-out everywhere ends all sessions of the person, and nobody else’s', async () => {
  await add('Ilse Quandt', 'dispatcher')
  await add('Jonas Merrill', 'technician')
  const [here, there, others] = [
    cookiesOf(await signInAs('Ilse Quandt')),
    cookiesOf(await signInAs('Ilse Quandt')),
    cookiesOf(await signInAs('Jonas Merrill')),
  ]
  expect((await signOutEverywhere(send('/api/auth/sign-out-everywhere', { cookie: here }))).status).toBe(200)
  expect(await personOf(read('/', here))).toBeUndefined()
  expect(await personOf(read('/', there))).toBeUndefined()
  expect(await personOf(read('/', others))).toMatchObject({ name: 'Jonas Merrill' })
})

test('a session lives 400 days at most, and ends after 30 idle days', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const answer = await signInAs('Ilse Quandt')
  const cookie = cookiesOf(answer)
  expect(answer.headers.getSetCookie()[0]).toContain(`Max-Age=${400 * 24 * 60 * 60};`)
  const lieIdle = (days: number) =>
    store().prisma.session.updateMany({
      data: { updatedAt: new Date(Date.now() - days * 24 * 60 * 60 * 1000) },
    })
  await lieIdle(29)
  expect(await personOf(read('/', cookie))).toMatchObject({ name: 'Ilse Quandt' })
  await lieIdle(31)
  expect(await personOf(read('/', cookie))).toBeUndefined()
  expect(await store().prisma.session.count()).toBe(0)
})

test('using a session moves its last use on, once a day', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const cookie = cookiesOf(await signInAs('Ilse Quandt'))
  const twoDays = 2 * 24 * 60 * 60 * 1000
  const begun = new Date(Date.now() - twoDays)
  const expiresAt = new Date(begun.getTime() + 400 * 24 * 60 * 60 * 1000)
  await store().prisma.session.updateMany({ data: { updatedAt: begun, expiresAt } })
  await personOf(read('/', cookie))
  const [session] = await store().prisma.session.findMany()
  expect(Date.now() - session!.updatedAt.getTime()).toBeLessThan(60_000)
})

test('INCHWATER_IDLE_DAYS sets how long a session may lie idle', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const cookie = cookiesOf(await signInAs('Ilse Quandt'))
  const threeDaysAgo = new Date(Date.now() - 3 * 24 * 60 * 60 * 1000)
  await store().prisma.session.updateMany({ data: { updatedAt: threeDaysAgo } })
  process.env.INCHWATER_IDLE_DAYS = '2'
  try {
    expect(await personOf(read('/', cookie))).toBeUndefined()
  } finally {
    delete process.env.INCHWATER_IDLE_DAYS
  }
})

test('a deactivated person is told so only with the right password', async () => {
  await add('Mara Otell', 'manager')
  const id = await add('Ilse Quandt', 'dispatcher')
  changeActive(store().database, id, false, undefined, new Date())
  expect(await (await signInAs('Ilse Quandt')).json()).toMatchObject({ problem: { code: 'deactivated' } })
  expect((await signInAs('Ilse Quandt', 'not the password')).status).toBe(401)
  expect(await store().prisma.session.count()).toBe(0)
})

test('requireRole lets only the roles in that it names', async () => {
  await add('Jonas Merrill', 'technician')
  const cookie = cookiesOf(await signInAs('Jonas Merrill'))
  expect(await requireRole(read('/', cookie))).toMatchObject({ role: 'technician' })
  expect(await requireRole(read('/', cookie), 'technician', 'manager')).toMatchObject({ role: 'technician' })
  expect(await requireRole(read('/', cookie), 'manager')).toMatchObject({ status: 403 })
  expect(await requireRole(read('/'), 'manager')).toMatchObject({ status: 401 })
})

test('changing one’s own password needs the old one, and signs every other browser out', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const [here, there] = [cookiesOf(await signInAs('Ilse Quandt')), cookiesOf(await signInAs('Ilse Quandt'))]
  const change = (current: string) =>
    changePassword(
      send('/api/auth/password', { cookie: here, body: { current, password: 'four other plain words' } }),
    )
  expect((await change('not the password')).status).toBe(403)
  const changed = await change(password)
  expect(changed.status).toBe(200)
  expect(await personOf(read('/', cookiesOf(changed)))).toMatchObject({ name: 'Ilse Quandt' })
  expect(await personOf(read('/', there))).toBeUndefined()
  expect((await signInAs('Ilse Quandt')).status).toBe(401)
  expect((await signInAs('Ilse Quandt', 'four other plain words')).status).toBe(200)
})

test('the longest password signs in, and one longer is told so', async () => {
  const longest = 'four words '.repeat(20).slice(0, 200)
  await createPerson({ name: 'Ilse Quandt', role: 'dispatcher', password: longest })
  expect((await signInAs('Ilse Quandt', longest)).status).toBe(200)
  expect((await signInAs('Ilse Quandt', `${longest}x`)).status).toBe(400)
})

test('passwords are kept as argon2id hashes, and the session secret is the server’s alone', async () => {
  await add('Ilse Quandt', 'dispatcher')
  await signInAs('Ilse Quandt')
  const [account] = await store().prisma.account.findMany()
  expect(account?.password).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
  expect(statSync(path.join(store().dataFolder, 'session-secret')).mode & 0o777).toBe(0o600)
})
