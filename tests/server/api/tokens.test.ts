import { afterEach, beforeEach, expect, test } from 'vitest'
import { callerOf, endToken, listTokens, makeToken, mostDays } from '@/lib/server/api/tokens'
import { changeActive, changeRole } from '@/lib/server/people/changes'
import { readEvents } from '@/lib/server/people/events'
import { listPeople } from '@/lib/server/people/list'
import { makeReset } from '@/lib/server/people/resets'
import { store } from '@/lib/server/people/store'
import { add, withFreshData } from '../people/team'

withFreshData()
const now = new Date('2026-03-10T12:00:00.000Z')
const later = (ms: number) => new Date(now.getTime() + ms)
const day = 24 * 60 * 60 * 1000
let manager = ''
let other = ''
beforeEach(async () => {
  manager = await add('Mara Otell', 'manager')
  other = await add('Bodil Ruthe', 'manager')
})
const database = () => store().database
const form = { name: 'Office scheduler', role: 'dispatcher' as const, until: '2026-03-31' }
function make(changes: Partial<typeof form | { role: 'technician' }> = {}, by = manager) {
  const made = makeToken(database(), { ...form, ...changes }, by, now)
  if (!made.ok) throw new Error(made.problem.message)
  return made.value
}
const problemOf = (changes: object) => {
  const made = makeToken(database(), { ...form, ...changes }, manager, now)
  return made.ok ? undefined : made.problem.code
}
afterEach(() => {
  expect(JSON.stringify(database().prepare('SELECT * FROM "ApiToken"').all())).not.toContain('inchwater_')
})

test('a token opens what its program may do, as an author of its own, and only its hash is kept', () => {
  const { token, expiresAt } = make()
  expect(token).toMatch(/^inchwater_[\w-]{43}$/)
  expect(Date.parse(expiresAt)).toBe(Date.parse('2026-04-01T00:00:00Z'))
  const caller = callerOf(database(), token, now)
  expect(caller?.person).toMatchObject({ name: 'Office scheduler', role: 'dispatcher' })
  expect(listPeople(database()).find(({ id }) => id === caller?.person.id)).toMatchObject({ program: true })
  expect(callerOf(database(), `${token}x`, now)).toBeUndefined()
  const kept = database().prepare<[], string>('SELECT "secretHash" FROM "ApiToken"').pluck().get()!
  expect(kept).toMatch(/^[0-9a-f]{64}$/)
})

test('a token works through its last day, and not a moment longer', () => {
  const { token } = make()
  expect(callerOf(database(), token, new Date('2026-03-31T23:59:59.999Z'))).toBeDefined()
  expect(callerOf(database(), token, new Date('2026-04-01T00:00:00.000Z'))).toBeUndefined()
  expect(listTokens(database(), new Date('2026-04-02T00:00:00.000Z'))[0]?.state).toBe('has ended')
})

test('a second token of the same name writes as the same author; two names are two authors', () => {
  const one = callerOf(database(), make().token, now)
  const two = callerOf(database(), make({ name: 'office  SCHEDULER' }).token, now)
  const three = callerOf(database(), make({ name: 'Parts counter' }).token, now)
  expect(two?.person).toEqual(one?.person)
  expect(two?.tokenId).not.toBe(one?.tokenId)
  expect(three?.person.id).not.toBe(one?.person.id)
})

test('makeToken refuses the name of a person, a day that is over, a year and more, and another role for the same name', () => {
  make()
  expect(problemOf({ name: 'mara otell' })).toBe('name-taken')
  expect(problemOf({ until: '2026-03-09' })).toBe('over-already')
  expect(
    problemOf({
      until: later((mostDays + 2) * day)
        .toISOString()
        .slice(0, 10),
    }),
  ).toBe('too-long')
  expect(
    problemOf({
      until: later(mostDays * day)
        .toISOString()
        .slice(0, 10),
    }),
  ).toBeUndefined()
  expect(problemOf({ role: 'technician' })).toBe('other-role')
})

test('a token that is ended opens nothing from then on, stays listed, and ends once', () => {
  const { token } = make()
  const { tokenId } = callerOf(database(), token, now)!
  expect(endToken(database(), tokenId, manager, now)).toEqual({ ok: true, value: true })
  expect(callerOf(database(), token, now)).toBeUndefined()
  expect(endToken(database(), tokenId, manager, later(day))).toEqual({ ok: true, value: true })
  expect(listTokens(database(), now)).toMatchObject([
    { id: tokenId, state: 'was ended', madeBy: 'Mara Otell' },
  ])
  expect(endToken(database(), 'nothing', manager, now)).toMatchObject({ ok: false })
  expect(readEvents(database(), 10).filter(({ kind }) => kind.startsWith('token'))).toMatchObject([
    { kind: 'token ended', byId: manager },
    { kind: 'token made', byId: manager },
  ])
})

test('no token of a program that was taken off works; taken back, they work again', () => {
  const { token } = make()
  const { person } = callerOf(database(), token, now)!
  changeActive(database(), person.id, false, manager, now)
  expect(callerOf(database(), token, now)).toBeUndefined()
  expect(listTokens(database(), now)[0]?.state).toBe('taken off')
  expect(problemOf({})).toBe('taken-off')
  changeActive(database(), person.id, true, manager, now)
  expect(callerOf(database(), token, now)).toBeDefined()
})

test.each([
  ['is taken off the team', () => changeActive(database(), other, false, manager, now)],
  ['is a manager no more', () => changeRole(database(), other, 'technician', manager, now)],
])('the tokens that a manager made end when that manager %s; those of others go on', (_what, leave) => {
  const theirs = make({}, other)
  const ours = make()
  expect(leave()).toEqual({ ok: true, value: true })
  expect(callerOf(database(), theirs.token, now)).toBeUndefined()
  expect(callerOf(database(), ours.token, now)).toBeDefined()
})

test('an office program is never a manager, by our own rule and by the database’s; and it never gets a password', () => {
  const { person } = callerOf(database(), make().token, now)!
  expect(changeRole(database(), person.id, 'manager', manager, now)).toMatchObject({
    ok: false,
    problem: { code: 'a-program' },
  })
  expect(changeRole(database(), person.id, 'technician', manager, now)).toMatchObject({ ok: true })
  expect(makeReset(database(), person.id, manager, now)).toMatchObject({
    ok: false,
    problem: { code: 'a-program' },
  })
  const run = (sql: string, ...values: string[]) =>
    database()
      .prepare(sql)
      .run(...values)
  expect(() => run(`UPDATE "Person" SET "role" = 'manager' WHERE "id" = ?`, person.id)).toThrow(
    /never a manager/,
  )
  expect(() =>
    run(
      `INSERT INTO "Account" ("id", "accountId", "providerId", "personId", "createdAt", "updatedAt")
       VALUES ('a', 'a', 'credential', ?, 'x', 'x')`,
      person.id,
    ),
  ).toThrow(/no password/)
  expect(() =>
    run(
      `INSERT INTO "ApiToken" ("id", "personId", "secretHash", "madeBy", "madeAt", "expiresAt") VALUES ('t', ?, 'h', ?, 'x', 'y')`,
      manager,
      manager,
    ),
  ).toThrow(/belongs to an office program/)
})

test('a token is never deleted, never prolonged, and never brought back', () => {
  const { token } = make()
  const { tokenId } = callerOf(database(), token, now)!
  endToken(database(), tokenId, manager, now)
  for (const sql of [
    'DELETE FROM "ApiToken"',
    `UPDATE "ApiToken" SET "expiresAt" = '2099-01-01'`,
    'UPDATE "ApiToken" SET "revokedAt" = NULL',
    `UPDATE "ApiToken" SET "secretHash" = 'x'`,
  ])
    expect(() => database().exec(sql), sql).toThrow(/a token is ended/)
})

test('the last use is noted, at most once a minute', () => {
  const { token } = make()
  const lastUse = () => listTokens(database(), now)[0]?.lastUsedAt
  expect(lastUse()).toBeNull()
  callerOf(database(), token, now)
  const first = lastUse()
  expect(Date.parse(first!)).toBe(now.getTime())
  callerOf(database(), token, later(59_000))
  expect(lastUse()).toBe(first)
  callerOf(database(), token, later(60_000))
  expect(Date.parse(lastUse()!)).toBe(now.getTime() + 60_000)
})
