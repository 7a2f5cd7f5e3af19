import { expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { forgetGuesses, type Target, takeGuess, waitAfter } from '@/lib/server/people/guesses'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, send, withFreshData } from './team'

withFreshData()

const minute = 60_000
const start = Date.UTC(2026, 10, 25)
const account: Target = { of: 'account', which: ['ilse quandt'] }
const at = (address: string): Target => ({ of: 'account at address', which: ['ilse quandt', address] })
const guess = (targets: Target[], now: number) => takeGuess(store().database, targets, now)

/** Guesses wrongly as soon as it is let, until `until`. Answers how many guesses were let. */
function guessOn(targets: Target[], until: number): number {
  let now = start
  for (let let_ = 0; ; ) {
    const taken = guess(targets, now)
    if (taken.allowed) let_++
    else now += taken.waitMs
    if (now >= until) return let_
  }
}

test('waitAfter doubles the wait with each wrong guess past the free ones, up to the longest', () => {
  const pace = { free: 3, firstWaitMs: 1000, longestWaitMs: 5000 }
  expect([0, 2, 3, 4, 5, 6, 1000].map((wrong) => waitAfter(wrong, pace))).toEqual([
    0, 0, 1000, 2000, 4000, 5000, 5000,
  ])
})

test('five wrong guesses are free, then they wait 5 s, 10 s, 20 s', () => {
  for (let i = 0; i < 5; i++) expect(guess([at('192.0.2.1')], start + i).allowed).toBe(true)
  expect(guess([at('192.0.2.1')], start + 4)).toEqual({ allowed: false, waitMs: 5000 })
  expect(guess([at('192.0.2.1')], start + 5004).allowed).toBe(true)
  expect(guess([at('192.0.2.1')], start + 5004)).toEqual({ allowed: false, waitMs: 10_000 })
  expect(guess([at('192.0.2.1')], start + 15_004).allowed).toBe(true)
  expect(guess([at('192.0.2.1')], start + 15_004)).toEqual({ allowed: false, waitMs: 20_000 })
})

test('knocking while it waits prolongs nothing', () => {
  for (let i = 0; i < 5; i++) guess([at('192.0.2.1')], start)
  for (let i = 0; i < 100; i++) expect(guess([at('192.0.2.1')], start + i).allowed).toBe(false)
  expect(guess([at('192.0.2.1')], start + 5000).allowed).toBe(true)
})

test('a guess counts from the moment it is made, so a hundred at once are no more than five', () => {
  const taken = Array.from({ length: 100 }, () => guess([at('192.0.2.1')], start))
  expect(taken.filter(({ allowed }) => allowed)).toHaveLength(5)
})

test('right guesses don’t count, however many', () => {
  for (let i = 0; i < 200; i++) {
    const taken = guess([account, at('192.0.2.1'), { of: 'address', which: ['192.0.2.1'] }], start + i)
    expect(taken.allowed).toBe(true)
    if (taken.allowed) taken.wasRight()
  }
})

test('a right guess forgives the slips before it at that place', () => {
  for (let i = 0; i < 4; i++) guess([at('192.0.2.1')], start)
  const taken = guess([at('192.0.2.1')], start)
  if (taken.allowed) taken.wasRight()
  for (let i = 0; i < 5; i++) expect(guess([at('192.0.2.1')], start).allowed).toBe(true)
})

test('signing in to an account of one’s own wins no fresh guesses at others', () => {
  const address: Target = { of: 'address', which: ['192.0.2.1'] }
  for (let i = 0; i < 19; i++) guess([address], start)
  for (let i = 0; i < 5; i++) {
    const own = guess([{ of: 'account', which: ['own'] }, address], start)
    if (own.allowed) own.wasRight()
  }
  expect(guess([address], start).allowed).toBe(true)
  expect(guess([address], start).allowed).toBe(false)
})

test('from one address no more than 20 guesses an hour are let at one account', () => {
  expect(guessOn([account, at('192.0.2.1')], start + 60 * minute)).toBeLessThanOrEqual(20)
})

test('guessing from elsewhere never keeps an account shut for more than two minutes', () => {
  for (let i = 0; i < 500; i++) {
    const taken = guess([account, at(`203.0.113.${i}`)], start + i * 1000)
    if (!taken.allowed) expect(taken.waitMs).toBeLessThanOrEqual(2 * minute)
  }
  expect(guess([account, at('192.0.2.1')], start + 500_000 + 2 * minute).allowed).toBe(true)
})

test('one address alone does not shut the account to others at all within its first hours', () => {
  guessOn([account, at('203.0.113.1')], start + 2 * 60 * minute)
  expect(guess([account, at('192.0.2.1')], start + 2 * 60 * minute).allowed).toBe(true)
})

test('an hour without a wrong guess wipes the slate, and the row', () => {
  for (let i = 0; i < 5; i++) guess([at('192.0.2.1')], start)
  guess([at('192.0.2.2')], start + 61 * minute)
  expect(guess([at('192.0.2.1')], start + 61 * minute).allowed).toBe(true)
  const rows = store().database.prepare('SELECT "count" FROM "WrongGuesses"').all()
  expect(rows).toEqual([{ count: 1 }, { count: 1 }])
})

test('forgetGuesses wipes the slate of one target', () => {
  for (let i = 0; i < 20; i++) guess([account], start)
  expect(guess([account], start).allowed).toBe(false)
  forgetGuesses(store().database, account)
  expect(guess([account], start).allowed).toBe(true)
})

test('what was typed as a name is not kept', () => {
  guess([{ of: 'account', which: ['a password typed into the wrong field'] }], start)
  const row = store().database.prepare('SELECT * FROM "WrongGuesses"').get()
  expect(JSON.stringify(row)).not.toContain('password')
})

// The whole way, through the sign-in route.

const tryAs = (name: string, typed: string, more: Parameters<typeof send>[1] = {}) =>
  signIn(send('/api/auth/sign-in', { ...more, body: { name, password: typed } }))

test('after five wrong passwords the route says how long to wait, known name or not', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const answers: string[] = []
  for (const name of ['Ilse Quandt', 'Nobody Here']) {
    for (let i = 0; i < 5; i++) expect((await tryAs(name, 'wrong')).status).toBe(401)
    const waiting = await tryAs(name, password)
    expect(waiting.status).toBe(429)
    expect(waiting.headers.get('retry-after')).toMatch(/^[1-5]$/)
    answers.push((await waiting.text()).replace(/\d+/, 'N'))
  }
  expect(answers[0]).toBe(answers[1])
})

test('many wrong passwords sent at once are limited like those sent one by one', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const answers = await Promise.all(Array.from({ length: 30 }, () => tryAs('Ilse Quandt', 'wrong')))
  expect(answers.filter(({ status }) => status === 401)).toHaveLength(5)
  expect(answers.filter(({ status }) => status === 429)).toHaveLength(25)
})

test('from one address, guessing at many names is limited too', async () => {
  const statuses: number[] = []
  for (let i = 0; i < 21; i++) statuses.push((await tryAs(`Name ${i}`, 'wrong')).status)
  expect(statuses.slice(0, 20)).toEqual(Array(20).fill(401))
  expect(statuses[20]).toBe(429)
})

test('signing in fifty times in a row is no trouble', async () => {
  await add('Ilse Quandt', 'dispatcher')
  for (let i = 0; i < 50; i++) expect((await tryAs('Ilse Quandt', password)).status).toBe(200)
})

test('a device that signed in before gets in while strangers guess at the account', async () => {
  await add('Ilse Quandt', 'dispatcher')
  await add('Jonas Merrill', 'technician')
  const own = cookiesOf(await tryAs('Ilse Quandt', password))
  const others = cookiesOf(await tryAs('Jonas Merrill', password))
  for (let i = 0; i < 20; i++) await tryAs('Ilse Quandt', 'wrong', { from: `203.0.113.${i}` })
  expect((await tryAs('Ilse Quandt', password, { from: '192.0.2.9' })).status).toBe(429)
  expect((await tryAs('Ilse Quandt', password, { from: '192.0.2.9', cookie: others })).status).toBe(429)
  expect((await tryAs('Ilse Quandt', password, { from: '192.0.2.9', cookie: own })).status).toBe(200)
})

test('a device cookie lets nobody in, and its guesses are limited', async () => {
  await add('Ilse Quandt', 'dispatcher')
  const own = cookiesOf(await tryAs('Ilse Quandt', password))
  for (let i = 0; i < 5; i++) expect((await tryAs('Ilse Quandt', 'wrong', { cookie: own })).status).toBe(401)
  expect((await tryAs('Ilse Quandt', password, { cookie: own })).status).toBe(429)
})
