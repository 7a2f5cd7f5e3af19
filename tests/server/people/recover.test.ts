import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { POST as resetPassword } from '@/app/api/people/resets/use/route'
import { changeActive } from '@/lib/server/people/changes'
import { recoverManager } from '@/lib/server/people/recover'
import { store } from '@/lib/server/people/store'
import { add, send, withFreshData } from './team'

withFreshData()

const recover = (name?: string) => recoverManager(store().database, name, new Date())

test('npm run recover-manager prints a link that lets the manager set a new password', async () => {
  await add('Mara Otell', 'manager')
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--import', 'tsx', 'lib/server/people/recoverCommand.ts'],
    { encoding: 'utf8', env: { ...process.env, PORT: '3456' } },
  )
  expect([status, stderr]).toEqual([0, ''])
  const [, token] = /http:\/\/localhost:3456\/reset#([\w-]{43})\n/.exec(stdout) ?? []
  const answer = await resetPassword(send('/', { body: { token, password: 'four other plain words' } }))
  expect(await answer.json()).toMatchObject({ ok: true, value: { name: 'Mara Otell', role: 'manager' } })
})

test('with several managers it asks which, and takes the name as it is typed', async () => {
  await add('Mara Otell', 'manager')
  await add('Tess Ruvane', 'manager')
  expect(recover()).toMatchObject({
    problem: { code: 'which-manager', message: expect.stringContaining('Mara Otell, Tess Ruvane') },
  })
  expect(recover('tess  ruvane')).toMatchObject({ ok: true, value: { name: 'Tess Ruvane' } })
  expect(recover('Nobody Here')).toMatchObject({ problem: { code: 'no-such-manager' } })
})

test('it makes nobody a manager, and lets nobody deactivated in', async () => {
  await add('Mara Otell', 'manager')
  const tess = await add('Tess Ruvane', 'manager')
  await add('Jonas Merrill', 'technician')
  changeActive(store().database, tess, false, undefined, new Date())
  expect(recover('Jonas Merrill')).toMatchObject({ problem: { code: 'no-such-manager' } })
  expect(recover()).toMatchObject({ ok: true, value: { name: 'Mara Otell' } })
})

test('before set-up it points to the code', () => {
  expect(recover()).toMatchObject({
    problem: { code: 'no-manager', message: expect.stringContaining('npm start') },
  })
})

test('making the link is written down as done from the terminal', async () => {
  const personId = await add('Mara Otell', 'manager')
  recover()
  const [event] = await store().prisma.personEvent.findMany({ orderBy: { seq: 'desc' }, take: 1 })
  expect(event).toMatchObject({ kind: 'reset link made', personId, byId: null })
})
