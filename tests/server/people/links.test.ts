import { beforeEach, expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { POST as accept } from '@/app/api/people/invitations/accept/route'
import { POST as invite } from '@/app/api/people/invitations/route'
import { POST as look } from '@/app/api/people/links/route'
import { POST as makeReset } from '@/app/api/people/resets/route'
import { POST as resetPassword } from '@/app/api/people/resets/use/route'
import { changeActive, changeRole } from '@/lib/server/people/changes'
import { makeLink, readLink } from '@/lib/server/people/links'
import { personOf } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, read, send, withFreshData } from './team'

withFreshData()

let managerId = ''
let manager = ''
beforeEach(async () => {
  managerId = await add('Mara Otell', 'manager')
  manager = await signedIn('Mara Otell')
})

const newPassword = 'four other plain words'
const signedIn = async (name: string, typed = password) =>
  cookiesOf(await signIn(send('/', { body: { name, password: typed } })))

/** Asks a manager's route for a link and takes the secret from behind its #. */
async function linkFrom(answer: Response): Promise<string> {
  const { value } = (await answer.json()) as { value: { link: string } }
  return value.link.split('#')[1]!
}
const invited = async (name = 'Jonas Merrill', role = 'technician') =>
  linkFrom(await invite(send('/', { cookie: manager, body: { name, role } })))
const resetFor = async (personId: string) =>
  linkFrom(await makeReset(send('/', { cookie: manager, body: { personId } })))
const acceptWith = (token: string) => accept(send('/', { body: { token, password: newPassword } }))
const resetWith = (token: string) => resetPassword(send('/', { body: { token, password: newPassword } }))

/** Lets days pass for a link, by moving its end. */
const age = (days: number) =>
  store()
    .database.prepare(
      `UPDATE "OneTimeLink" SET "expiresAt" = strftime('%Y-%m-%dT%H:%M:%f+00:00', "expiresAt", ?) WHERE "closedAt" IS NULL`,
    )
    .run(`-${days} days`)

test('an invitation lets somebody join under its name and role, and signs them in', async () => {
  const answer = await acceptWith(await invited())
  expect(answer.status).toBe(200)
  expect(await personOf(read('/', cookiesOf(answer)))).toMatchObject({
    name: 'Jonas Merrill',
    role: 'technician',
  })
  expect(await signedIn('jonas merrill', newPassword)).toContain('session_token')
})

test('the link leads to the page for joining, on the address the manager uses, its secret behind the #', async () => {
  const answer = await invite(
    send('/', { cookie: manager, body: { name: 'Jonas Merrill', role: 'technician' } }),
  )
  const { value } = (await answer.json()) as { value: { link: string; expiresAt: string } }
  expect(value.link).toMatch(/^http:\/\/localhost\/join#[\w-]{43}$/)
  expect(Date.parse(value.expiresAt) - Date.now()).toBeCloseTo(7 * 24 * 60 * 60 * 1000, -5)
})

test('only the hash of a link is kept', async () => {
  const token = await invited()
  expect(JSON.stringify(await store().prisma.oneTimeLink.findMany())).not.toContain(token)
})

test('an invitation works once, also when it is sent twice at the same moment', async () => {
  const token = await invited()
  const answers = await Promise.all([acceptWith(token), acceptWith(token)])
  expect(answers.map(({ status }) => status).sort()).not.toEqual([200, 200])
  expect((await acceptWith(token)).status).toBe(410)
  expect(await store().prisma.person.count()).toBe(2)
})

test('an invitation is dead after seven days', async () => {
  const token = await invited()
  age(6)
  expect((await look(send('/', { body: { token } }))).status).toBe(200)
  age(1)
  expect((await look(send('/', { body: { token } }))).status).toBe(410)
  expect((await acceptWith(token)).status).toBe(410)
})

test('a second invitation for a name calls the first one back', async () => {
  const first = await invited()
  const second = await invited()
  expect((await acceptWith(first)).status).toBe(410)
  expect((await acceptWith(second)).status).toBe(200)
})

test('nobody is invited under a name that somebody has, whatever its capitals', async () => {
  const answer = await invite(send('/', { cookie: manager, body: { name: 'MARA  otell', role: 'manager' } }))
  expect(answer.status).toBe(409)
  expect(await answer.json()).toMatchObject({ problem: { code: 'name-taken' } })
})

test('a short or repetitive password is refused, and the invitation stays open', async () => {
  const token = await invited()
  expect((await accept(send('/', { body: { token, password: 'short' } }))).status).toBe(400)
  expect((await accept(send('/', { body: { token, password: 'abababababab' } }))).status).toBe(400)
  expect((await acceptWith(token)).status).toBe(200)
})

test('only a manager invites and makes resets', async () => {
  await add('Jonas Merrill', 'technician')
  const technician = await signedIn('Jonas Merrill')
  const body = { name: 'Tess Ruvane', role: 'manager', personId: managerId }
  expect((await invite(send('/', { cookie: technician, body }))).status).toBe(403)
  expect((await makeReset(send('/', { cookie: technician, body }))).status).toBe(403)
  expect((await invite(send('/', { body }))).status).toBe(401)
})

test('a reset link sets a new password, ends all sessions and signs in', async () => {
  const id = await add('Jonas Merrill', 'technician')
  const before = await signedIn('Jonas Merrill')
  const answer = await resetWith(await resetFor(id))
  expect(await personOf(read('/', cookiesOf(answer)))).toMatchObject({ id })
  expect(await personOf(read('/', before))).toBeUndefined()
  expect(await signedIn('Jonas Merrill', password)).toBe('')
  expect(await signedIn('Jonas Merrill', newPassword)).toContain('session_token')
})

test('a reset link works once, for a day, and the newest only', async () => {
  const id = await add('Jonas Merrill', 'technician')
  const [first, second] = [await resetFor(id), await resetFor(id)]
  expect((await resetWith(first)).status).toBe(410)
  expect((await resetWith(second)).status).toBe(200)
  expect((await resetWith(second)).status).toBe(410)
  const third = await resetFor(id)
  age(1)
  expect((await resetWith(third)).status).toBe(410)
})

test('a link of one purpose opens nothing of another', async () => {
  const id = await add('Jonas Merrill', 'technician')
  expect((await acceptWith(await resetFor(id))).status).toBe(410)
  expect((await resetWith(await invited('Tess Ruvane'))).status).toBe(410)
})

test('deactivating somebody kills the links to and from them', async () => {
  const id = await add('Jonas Merrill', 'technician')
  const reset = await resetFor(id)
  changeActive(store().database, id, false, managerId, new Date())
  expect((await resetWith(reset)).status).toBe(410)
  const second = await add('Tess Ruvane', 'manager')
  const invitation = await invited('Oda Pell')
  changeActive(store().database, managerId, false, second, new Date())
  expect((await acceptWith(invitation)).status).toBe(410)
})

test('a manager who becomes something else leaves no open invitation behind', async () => {
  const second = await add('Tess Ruvane', 'manager')
  const invitation = await invited('Oda Pell', 'manager')
  changeRole(store().database, managerId, 'technician', second, new Date())
  expect((await acceptWith(invitation)).status).toBe(410)
})

test('a link tells whom it is for before a password is typed, and nothing when it is dead', async () => {
  const answer = await look(send('/', { body: { token: await invited() } }))
  expect(await answer.json()).toMatchObject({ value: { purpose: 'invitation', name: 'Jonas Merrill' } })
  const reset = await look(send('/', { body: { token: await resetFor(managerId) } }))
  expect(await reset.json()).toMatchObject({ value: { purpose: 'reset', name: 'Mara Otell' } })
  expect((await look(send('/', { body: { token: 'made-up' } }))).status).toBe(410)
})

test('a set-up code is read as it is typed: small letters, spaces, O for 0, I and L for 1', () => {
  const { database } = store()
  const now = new Date()
  for (let i = 0; i < 50; i++) {
    const { secret } = makeLink(database, { purpose: 'set-up' }, undefined, now)
    expect(secret).toMatch(/^([0-9A-HJKMNP-TV-Z]{5}-){3}[0-9A-HJKMNP-TV-Z]{5}$/)
    const typed = secret.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')
    expect(readLink(database, 'set-up', typed, now)).toBeDefined()
  }
})

test('a closed link can’t be opened again, not even by SQL', async () => {
  await acceptWith(await invited())
  expect(() => store().database.exec('UPDATE "OneTimeLink" SET "closedAt" = NULL')).toThrow(
    'a closed link stays closed',
  )
})
