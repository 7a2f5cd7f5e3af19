import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { seededRandom } from '@/lib/core/seeded'
import { restoreBackup } from '@/lib/server/backup/restoreBackup'
import { restoreCommand } from '@/lib/server/backup/restoreCommand'
import { databaseFile } from '@/lib/server/database'
import { migrate } from '@/prisma/migrate'
import { buildProgram, buildWriter, startWriter } from '../log/childProgram'
import { noon, tamper } from '../log/freshLog'
import { filesIn, filledBackup, withFolders } from './aTeam'

const folders = withFolders()
let backup = ''
beforeEach(async () => {
  backup = await filledBackup(folders)
})

const restore = (named = false, into = folders.target) =>
  restoreBackup({ from: backup, into, named, now: noon })

/** Nothing was restored: the target is not there, and nothing is left beside it. */
const nothingHappened = () => readdirSync(folders.root).sort().join() === 'backups,data'

/** Writes the manifest anew, with the hashes of the files as they are: a back-up that somebody made by hand. */
function signAnew(change: (manifest: Record<string, unknown>) => void): void {
  const file = path.join(backup, 'manifest.json')
  const manifest = JSON.parse(readFileSync(file, 'utf8'))
  for (const entry of manifest.files) {
    const bytes = existsSync(path.join(backup, entry.path)) && readFileSync(path.join(backup, entry.path))
    if (bytes) Object.assign(entry, { bytes: bytes.length, sha256: sha256(bytes) })
  }
  change(manifest)
  writeFileSync(file, JSON.stringify(manifest))
  writeFileSync(path.join(backup, 'manifest.sha256'), `${sha256(readFileSync(file))}  manifest.json\n`)
}
const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')

const kept = ['inchwater.db', 'manifest.json', 'manifest.sha256', 'photos/ab/abcd.jpg', 'photos/plate.jpg']

describe('a damaged back-up is never half restored', () => {
  test('the files of a back-up are these, and each is damaged below', () => {
    expect(filesIn(backup)).toEqual(kept)
  })

  test.each(kept)('a byte flipped anywhere in %s is found, and the file is named', async (file) => {
    const at = path.join(backup, file)
    const whole = readFileSync(at)
    const random = seededRandom(whole.length)
    const places = [
      0,
      whole.length - 1,
      ...Array.from({ length: 12 }, () => Math.floor(random() * whole.length)),
    ]
    for (const place of places) {
      const spoiled = Buffer.from(whole)
      spoiled[place]! ^= 1 << Math.floor(random() * 8)
      writeFileSync(at, spoiled)
      expect(await restore(), `byte ${place}`).toMatchObject({
        ok: false,
        problem: { message: expect.stringContaining(file) },
      })
      expect(nothingHappened()).toBe(true)
    }
    writeFileSync(at, whole)
    expect(await restore()).toMatchObject({ ok: true })
  })

  test.each(kept)('%s cut short or missing is found, and the file is named', async (file) => {
    const at = path.join(backup, file)
    const whole = readFileSync(at)
    for (const spoil of [() => writeFileSync(at, whole.subarray(0, -1)), () => rmSync(at)]) {
      spoil()
      expect(await restore()).toMatchObject({
        ok: false,
        problem: { message: expect.stringContaining(file) },
      })
      expect(nothingHappened()).toBe(true)
    }
  })

  test('a log that was changed before its hashes were taken anew is found, and the entry is named', async () => {
    const db = new Database(path.join(backup, 'inchwater.db'))
    tamper(db, "UPDATE LogContent SET bytes = replace(bytes, 'Remark 7 ', 'Remark 8 ') WHERE seq = 8")
    db.close()
    signAnew(() => {})
    expect(await restore()).toMatchObject({
      ok: false,
      problem: { code: 'database-damaged', message: expect.stringContaining('entry 8 was changed') },
    })
    expect(nothingHappened()).toBe(true)
  })

  test('the database of another back-up, with its hashes taken anew, is not taken for this one', async () => {
    rmSync(path.join(backup, 'inchwater.db'))
    migrate(path.join(backup, 'inchwater.db'))
    signAnew(() => {})
    expect(await restore()).toMatchObject({ ok: false, problem: { code: 'other-log' } })
    expect(nothingHappened()).toBe(true)
  })

  test.each(['../outside', '/etc/hosts', 'photos/../../outside', 'a//b', '.', ''])(
    'a manifest that names %s leads nowhere out of the back-up',
    async (outside) => {
      writeFileSync(path.join(folders.backups, 'outside'), 'x')
      signAnew((manifest) => {
        manifest.files = [{ path: outside, bytes: 1, sha256: sha256(Buffer.from('x')) }]
      })
      expect(await restore()).toMatchObject({ ok: false, problem: { code: 'not-a-backup' } })
      expect(nothingHappened()).toBe(true)
    },
  )

  test('a folder that is no back-up, and one of a newer program, are said to be that', async () => {
    const command = async (...args: string[]) => {
      const said: string[] = []
      return [await restoreCommand(args, folders.target, (line) => said.push(line), noon), said.join(' ')]
    }
    expect(await command(folders.data)).toEqual([1, expect.stringContaining('holds no manifest.json')])
    expect(await command(path.join(folders.root, 'nowhere'))).toEqual([
      1,
      expect.stringContaining('holds no manifest.json'),
    ])
    signAnew((manifest) => {
      manifest.version = 2
    })
    expect(await command(backup)).toEqual([1, expect.stringContaining('written by a newer Inchwater')])
    expect(await command()).toEqual([64, expect.stringContaining('npm run restore -- ')])
    expect(await command(backup, '--over', 'x')).toEqual([64, expect.stringContaining('--into')])
    expect(nothingHappened()).toBe(true)
  })
})

describe('what is in a data folder already', () => {
  test('is left alone unless the folder is named; then it is moved aside, whole', async () => {
    expect(await restore(false, folders.data)).toMatchObject({
      ok: false,
      problem: { code: 'not-empty', message: expect.stringContaining(`--into "${folders.data}"`) },
    })
    writeFileSync(path.join(folders.data, 'mine.txt'), 'kept')
    const before = filesIn(folders.data)
    const said: string[] = []
    expect(await restoreCommand([backup, '--into', folders.data], '', (line) => said.push(line), noon)).toBe(
      0,
    )
    const aside = `${folders.data}.before-restore-2026-01-12T120000Z`
    expect(said[0]).toBe(`What was there before is in ${aside}`)
    expect(filesIn(aside)).toEqual(before)
    expect(filesIn(folders.data)).not.toContain('mine.txt')
  })

  test('an empty folder is filled', async () => {
    mkdirSync(folders.target)
    expect(await restore()).toMatchObject({ ok: true })
  })

  test('a folder in which a program works is refused, though it is named', async () => {
    const program = buildWriter(path.join(folders.backups))
    const writer = startWriter(program, databaseFile(folders.data), 'writer', 1)
    await writer.ready
    writer.go()
    while (writer.ended.size === 0) await sleep(5)
    expect(await restore(true, folders.data)).toMatchObject({ ok: false, problem: { code: 'in-use' } })
    writer.child.kill('SIGKILL')
    await writer.over
    expect(filesIn(folders.data)).toContain('session-secret')
    expect(readdirSync(folders.root).sort().join()).toBe('backups,data')
    expect(await restore(true, folders.data)).toMatchObject({ ok: true })
  })

  test('a connection that only reads, and lies idle, is found as well', async () => {
    const idle = new Database(databaseFile(folders.data))
    idle.prepare('SELECT count(*) FROM LogEntry').get()
    expect(await restore(true, folders.data)).toMatchObject({ ok: false, problem: { code: 'in-use' } })
    idle.close()
    expect(await restore(true, folders.data)).toMatchObject({ ok: true })
  })
})

describe('kill -9 in the middle', () => {
  let program = ''
  beforeEach(() => {
    const folder = path.join(folders.backups, 'program')
    mkdirSync(folder)
    program = buildProgram(folder, path.resolve('lib/server/backup/restoreCommand.ts'))
  })
  afterEach(() => rmSync(path.dirname(program), { recursive: true }))

  test('leaves the folder as it was or as it shall be, 8 times, and the next try succeeds', async () => {
    // Large enough that there is a middle: tens of milliseconds of copying and checking.
    for (let copy = 0; copy < 60; copy++) {
      mkdirSync(path.join(backup, 'photos', 'more'), { recursive: true })
      writeFileSync(path.join(backup, 'photos', 'more', `${copy}.jpg`), Buffer.alloc(20_000, copy))
    }
    signAnew((manifest) => {
      const entries = manifest.files as { path: string; bytes: number; sha256: string }[]
      for (let copy = 0; copy < 60; copy++) {
        const bytes = readFileSync(path.join(backup, 'photos', 'more', `${copy}.jpg`))
        entries.push({ path: `photos/more/${copy}.jpg`, bytes: bytes.length, sha256: sha256(bytes) })
      }
    })
    const random = seededRandom(20)
    const whole = filesIn(backup).filter((file) => !file.startsWith('manifest'))
    let inTheMiddle = 0
    for (let turn = 0; turn < 8; turn++) {
      const target = path.join(folders.root, `turn-${turn}`)
      const isNamed = turn % 2 === 1
      if (isNamed) cpSync(folders.data, target, { recursive: true })
      const before = isNamed ? filesIn(target) : undefined
      const args = [program, backup, ...(isNamed ? ['--into', target] : [])]
      const child = spawn(process.execPath, args, {
        stdio: 'ignore',
        env: { ...process.env, INCHWATER_DATA: target },
      })
      const draft = () => readdirSync(folders.root).find((name) => name.startsWith(`turn-${turn}.restoring-`))
      while (draft() === undefined && child.exitCode === null) await sleep(1)
      await sleep(60 * random())
      child.kill('SIGKILL')
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit')
      if (draft() !== undefined) inTheMiddle++
      if (existsSync(target)) expect([before, whole]).toContainEqual(filesIn(target))
      const aside = readdirSync(folders.root).find((name) => name.startsWith(`turn-${turn}.before-`))
      if (aside !== undefined) expect(filesIn(path.join(folders.root, aside))).toEqual(before)
      // The next try, with nothing cleared away by hand.
      expect(await restore(true, target)).toMatchObject({ ok: true })
      expect(filesIn(target)).toEqual(whole)
    }
    expect(inTheMiddle).toBeGreaterThanOrEqual(2)
  }, 60_000)
})
