import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { withLock } from '@/lib/server/prepare/withLock.mjs'
import { isNodeNewEnough, prepare } from '@/lib/server/prepare.mjs'

let root = ''
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'clone-'))
  write('package-lock.json', lockOf({ 'node_modules/a': { version: '1.0.0' } }))
  write('app/page.tsx', 'page')
  write('prisma/schema/base.prisma', 'schema')
})
afterEach(() => rmSync(root, { recursive: true }))

const lockOf = (packages: object) => JSON.stringify({ packages: { '': {}, ...packages } })

function write(file: string, text: string): void {
  mkdirSync(path.dirname(path.join(root, file)), { recursive: true })
  writeFileSync(path.join(root, file), text)
}

/** Prepares, with commands that only leave behind what the real ones would. Answers which were run. */
async function prepareHere(options = { build: true }, fail = ''): Promise<string[]> {
  const done: string[] = []
  const run = (_root: string, step: { say: string }) => {
    const word = step.say.split(' ')[0]!
    done.push(word)
    if (word === fail) throw new Error('failed')
    if (word === 'Installing') write('node_modules/.package-lock.json', lockOf({}))
    if (word === 'Generating') write('prisma/generated/client.ts', 'client')
    if (word === 'Building') write('.next/BUILD_ID', '1')
  }
  await prepare(root, options, run, () => {}).catch((error) => done.push(error.message))
  return done
}

test('a fresh clone is installed, generated and built; the second time there is nothing to do', async () => {
  expect(await prepareHere()).toEqual(['Installing', 'Generating', 'Building'])
  expect(await prepareHere()).toEqual([])
})

test('without --build nothing is built', async () => {
  expect(await prepareHere({ build: false })).toEqual(['Installing', 'Generating'])
  expect(await prepareHere()).toEqual(['Building'])
})

test.each([
  ['app/page.tsx', ['Building']],
  ['app/new/page.tsx', ['Building']],
  ['lib/core/new.ts', ['Building']],
  ['next.config.ts', ['Building']],
  ['prisma/schema/people.prisma', ['Generating', 'Building']],
  ['tests/some.test.ts', []],
  ['README.md', []],
])('when %s changes, what is done again is %o', async (file, steps) => {
  await prepareHere()
  write(file, 'changed')
  expect(await prepareHere()).toEqual(steps)
})

test('when the lock file changes, everything is done again', async () => {
  await prepareHere()
  write('package-lock.json', lockOf({ 'node_modules/a': { version: '1.0.1' } }))
  expect(await prepareHere()).toEqual(['Installing', 'Generating', 'Building'])
})

test('packages that somebody installed by hand are not installed again', async () => {
  write(
    'package-lock.json',
    lockOf({
      'node_modules/a': { version: '1.0.0' },
      'node_modules/other-os': { version: '1.0.0', optional: true },
    }),
  )
  write('node_modules/.package-lock.json', lockOf({ 'node_modules/a': { version: '1.0.0' } }))
  expect(await prepareHere({ build: false })).toEqual(['Generating'])
})

test('an old, a missing or a stray package is a reason to install', async () => {
  for (const packages of [
    { 'node_modules/a': { version: '0.9.0' } },
    {},
    { 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '1.0.0' } },
  ]) {
    write('node_modules/.package-lock.json', lockOf(packages))
    expect((await prepareHere({ build: false }, 'Installing'))[0]).toBe('Installing')
  }
})

test('a step that fails is done again the next time', async () => {
  await prepareHere()
  write('app/page.tsx', 'changed')
  expect(await prepareHere({ build: true }, 'Building')).toEqual(['Building', 'failed'])
  expect(await prepareHere()).toEqual(['Building'])
})

test('what changes while it is being built is built the next time', async () => {
  await prepareHere({ build: false })
  const run = () => {
    write('.next/BUILD_ID', '1')
    write('app/page.tsx', 'changed meanwhile')
  }
  await prepare(root, { build: true }, run, () => {})
  expect(await prepareHere()).toEqual(['Building'])
})

test('of two runs at once only one does the work', async () => {
  const runs = await Promise.all([prepareHere(), prepareHere()])
  expect(runs.flat().sort()).toEqual(['Building', 'Generating', 'Installing'])
})

test('a run waits for another one that is preparing, and takes over from one that died', async () => {
  const lock = path.join(root, '.prepared', 'lock')
  write('.prepared/lock', String(process.pid))
  const said: string[] = []
  const waiting = withLock(
    lock,
    () => 'worked',
    (text: string) => said.push(text),
  )
  await new Promise((resolve) => setTimeout(resolve, 50))
  expect(said).toEqual(['Another run is preparing; waiting for it …'])
  rmSync(lock)
  expect(await waiting).toBe('worked')
  // 2^22 is the most that Linux gives a process id, so nobody has this one.
  write('.prepared/lock', String(2 ** 22 + 1))
  expect(await withLock(lock, () => 'took over')).toBe('took over')
})

test('isNodeNewEnough wants 20.19 at the least', () => {
  expect(['v20.19.0', 'v20.20.2', 'v22.0.0'].map(isNodeNewEnough)).toEqual([true, true, true])
  expect(['v20.18.3', 'v18.20.0', 'v8.17.0'].map(isNodeNewEnough)).toEqual([false, false, false])
})
