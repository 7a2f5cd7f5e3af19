import { getAuthTables } from 'better-auth/db'
import { expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { POST as deactivate } from '@/app/api/people/[id]/deactivate/route'
import { POST as reactivate } from '@/app/api/people/[id]/reactivate/route'
import { POST as giveRole } from '@/app/api/people/[id]/role/route'
import { POST as signOutEverywhere } from '@/app/api/people/[id]/sign-out-everywhere/route'
import { GET as events } from '@/app/api/people/events/route'
import { GET as people } from '@/app/api/people/route'
import { createPerson } from '@/lib/server/people/createPerson'
import { personOf } from '@/lib/server/people/session'
import { authFor, store } from '@/lib/server/people/store'
import { Prisma } from '@/prisma/generated/client'
import { add, cookiesOf, password, read, send, withFreshData } from './team'

withFreshData()

const signedIn = async (name: string) => cookiesOf(await signIn(send('/', { body: { name, password } })))
const about = (id: string) => ({ params: Promise.resolve({ id }) })

async function team() {
  const ids = {
    mara: await add('Mara Otell', 'manager'),
    ilse: await add('Ilse Quandt', 'dispatcher'),
    jonas: await add('Jonas Merrill', 'technician'),
  }
  return { ids, manager: await signedIn('Mara Otell') }
}

test('everybody signed in may see who the people are; nobody else may', async () => {
  const { ids } = await team()
  const answer = await people(read('/', await signedIn('Jonas Merrill')))
  expect(await answer.json()).toEqual({
    ok: true,
    value: [
      { id: ids.ilse, name: 'Ilse Quandt', role: 'dispatcher', active: true },
      { id: ids.jonas, name: 'Jonas Merrill', role: 'technician', active: true },
      { id: ids.mara, name: 'Mara Otell', role: 'manager', active: true },
    ],
  })
  expect((await people(read('/'))).status).toBe(401)
})

test('a manager gives another role, and it counts at once', async () => {
  const { ids, manager } = await team()
  const jonas = await signedIn('Jonas Merrill')
  expect(
    (await giveRole(send('/', { cookie: manager, body: { role: 'dispatcher' } }), about(ids.jonas))).status,
  ).toBe(200)
  expect(await personOf(read('/', jonas))).toMatchObject({ role: 'dispatcher' })
})

test('a deactivated person is out at once and everywhere, stays on the list, and can be let in again', async () => {
  const { ids, manager } = await team()
  const jonas = await signedIn('Jonas Merrill')
  expect((await deactivate(send('/', { cookie: manager }), about(ids.jonas))).status).toBe(200)
  expect(await personOf(read('/', jonas))).toBeUndefined()
  const listed = (await (await people(read('/', manager))).json()) as {
    value: { id: string; active: boolean }[]
  }
  expect(listed.value.find(({ id }) => id === ids.jonas)).toMatchObject({ active: false })
  expect((await reactivate(send('/', { cookie: manager }), about(ids.jonas))).status).toBe(200)
  expect(await personOf(read('/', jonas))).toBeUndefined()
  expect(await personOf(read('/', await signedIn('Jonas Merrill')))).toMatchObject({ id: ids.jonas })
})

test('a manager signs a lost phone out', async () => {
  const { ids, manager } = await team()
  const jonas = await signedIn('Jonas Merrill')
  expect((await signOutEverywhere(send('/', { cookie: manager }), about(ids.jonas))).status).toBe(200)
  expect(await personOf(read('/', jonas))).toBeUndefined()
  expect(await personOf(read('/', manager))).toMatchObject({ id: ids.mara })
})

test('only a manager changes people', async () => {
  const { ids } = await team()
  for (const name of ['Ilse Quandt', 'Jonas Merrill']) {
    const cookie = await signedIn(name)
    for (const route of [deactivate, reactivate, signOutEverywhere, giveRole]) {
      expect((await route(send('/', { cookie, body: { role: 'manager' } }), about(ids.mara))).status).toBe(
        403,
      )
      expect((await route(send('/', { body: { role: 'manager' } }), about(ids.mara))).status).toBe(401)
    }
  }
})

test('the last active manager can’t be demoted or deactivated, not even by SQL', async () => {
  const { ids, manager } = await team()
  const demoted = await giveRole(
    send('/', { cookie: manager, body: { role: 'technician' } }),
    about(ids.mara),
  )
  expect([demoted.status, await demoted.json()]).toMatchObject([409, { problem: { code: 'last-manager' } }])
  expect((await deactivate(send('/', { cookie: manager }), about(ids.mara))).status).toBe(409)
  const { database } = store()
  const sentence = 'the last active manager stays'
  expect(() => database.exec(`UPDATE "Person" SET "role" = 'technician'`)).toThrow(sentence)
  expect(() => database.exec('UPDATE "Person" SET "active" = false')).toThrow(sentence)
})

test('with two managers one may go, then the other may not; a deactivated one does not count', async () => {
  const { ids, manager } = await team()
  const second = await add('Tess Ruvane', 'manager')
  expect((await deactivate(send('/', { cookie: manager }), about(second))).status).toBe(200)
  expect(
    (await giveRole(send('/', { cookie: manager, body: { role: 'dispatcher' } }), about(ids.mara))).status,
  ).toBe(409)
})

test('a change to nobody is answered with 404', async () => {
  const { manager } = await team()
  expect((await deactivate(send('/', { cookie: manager }), about('nobody'))).status).toBe(404)
})

test('every change is written down: what, whom, by whom, newest first; a change of nothing is not', async () => {
  const { ids, manager } = await team()
  await giveRole(send('/', { cookie: manager, body: { role: 'dispatcher' } }), about(ids.jonas))
  await giveRole(send('/', { cookie: manager, body: { role: 'dispatcher' } }), about(ids.jonas))
  await deactivate(send('/', { cookie: manager }), about(ids.jonas))
  const { value } = (await (await events(read('/', manager))).json()) as {
    value: { kind: string; seq: number }[]
  }
  expect(value.slice(0, 3)).toEqual([
    expect.objectContaining({ kind: 'deactivated', personId: ids.jonas, byId: ids.mara, detail: {} }),
    expect.objectContaining({
      kind: 'role changed',
      personId: ids.jonas,
      byId: ids.mara,
      detail: { from: 'technician', to: 'dispatcher' },
    }),
    expect.objectContaining({ kind: 'added', personId: ids.jonas, byId: null }),
  ])
  const older = await events(read(`/?before=${value[1]!.seq}`, manager))
  expect(((await older.json()) as { value: unknown[] }).value).toHaveLength(3)
  expect((await events(read('/', await signedIn('Ilse Quandt')))).status).toBe(403)
})

test('what was written down can’t be changed, removed or replaced, and nobody can be deleted', async () => {
  await team()
  const { database } = store()
  expect(() => database.exec(`UPDATE "PersonEvent" SET "byId" = 'x'`)).toThrow('never changed')
  expect(() => database.exec('DELETE FROM "PersonEvent"')).toThrow('never deleted')
  expect(() => database.exec('INSERT OR REPLACE INTO "PersonEvent" SELECT * FROM "PersonEvent"')).toThrow(
    'never replaced',
  )
  expect(() => database.exec('DELETE FROM "Person"')).toThrow('never deleted')
  expect(() => database.exec('INSERT OR REPLACE INTO "Person" SELECT * FROM "Person"')).toThrow('exists')
  expect(() => database.exec(`UPDATE "Person" SET "role" = 'owner' WHERE "role" = 'technician'`)).toThrow(
    'CHECK',
  )
})

test('createPerson takes a given id, and refuses a taken name and a taken id by name', async () => {
  const wanted = { id: 'tess', name: 'Tess Ruvane', role: 'manager' as const, password }
  expect(await createPerson(wanted)).toEqual({ ok: true, value: { id: 'tess' } })
  await expect(createPerson({ ...wanted, name: 'Other Name' })).rejects.toThrow(RangeError)
  expect(await createPerson({ ...wanted, id: 'other' })).toMatchObject({ problem: { code: 'name-taken' } })
})

test('the tables are what the sign-in library writes', () => {
  const models = Object.fromEntries(Object.entries(Prisma.ModelName))
  const { user, session, account } = getAuthTables(authFor(false).options)
  expect(Object.keys(models)).toEqual(
    expect.arrayContaining(['Person', 'Session', 'Account', 'Verification']),
  )
  const columns = (fields: Record<string, { fieldName?: string }>) =>
    Object.entries(fields).map(([name, { fieldName }]) => fieldName ?? name)
  expect(Object.keys(Prisma.PersonScalarFieldEnum)).toEqual(expect.arrayContaining(columns(user!.fields)))
  expect(Object.keys(Prisma.SessionScalarFieldEnum)).toEqual(expect.arrayContaining(columns(session!.fields)))
  expect(Object.keys(Prisma.AccountScalarFieldEnum)).toEqual(expect.arrayContaining(columns(account!.fields)))
})
