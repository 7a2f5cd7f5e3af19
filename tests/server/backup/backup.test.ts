import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { backupCommand } from '@/lib/server/backup/backupCommand'
import { makeBackup } from '@/lib/server/backup/makeBackup'
import { readManifest } from '@/lib/server/backup/manifest'
import { restoreBackup } from '@/lib/server/backup/restoreBackup'
import { databaseFile } from '@/lib/server/database'
import { openLog } from '@/lib/server/log/openLog'
import { pictureFile, sha256Of, writePictureFile } from '@/lib/server/photos/pictureFiles'
import { migrate } from '@/prisma/migrate'
import { buildWriter, startWriter } from '../log/childProgram'
import { noon, tamper } from '../log/freshLog'
import { smallKinds } from '../log/smallKinds'
import { filesIn, fillData, filledBackup, withFolders } from './aTeam'

const folders = withFolders()

const verifyIn = async (folder: string) => {
  const db = new Database(databaseFile(folder), { readonly: true })
  const verified = await openLog({ db, kinds: smallKinds, now: () => noon }).verify()
  db.close()
  return verified
}

test('makeBackup(wanted) copies database and photos, names each with its hash, and leaves the cookies’ secret out', async () => {
  const backup = await filledBackup(folders)
  expect(backup).toBe(path.join(folders.backups, 'inchwater-2026-01-12T120000Z'))
  expect(filesIn(backup)).toEqual([
    'inchwater.db',
    'manifest.json',
    'manifest.sha256',
    'photos/ab/abcd.jpg',
    'photos/plate.jpg',
  ])
  const { entries, headHash } = await verifyIn(folders.data)
  const read = await readManifest(backup)
  expect(read).toMatchObject({
    ok: true,
    value: { madeAt: noon.toISOString(), log: { entries, headHash }, people: 0, photos: 2 },
  })
  // SHA-256 of three bytes 09: `printf '\t\t\t' | sha256sum` (coreutils 9.4).
  expect(read.ok && read.value.files.find(({ path }) => path === 'photos/plate.jpg')).toEqual({
    path: 'photos/plate.jpg',
    bytes: 3,
    sha256: 'e740a6faf2db65f5853148d75d9a335d7c4b94ab106fe5f237bc34fdcfc74584',
  })
  expect(readdirSync(folders.backups)).toHaveLength(1)
  expect(statSync(backup).mode & 0o077).toBe(0)
})

test('what was withheld is not in a back-up made after it', async () => {
  const backup = await filledBackup(folders, 1)
  const bytes = readFileSync(path.join(backup, 'inchwater.db'), 'latin1')
  expect(bytes).toContain('[withheld]')
  expect(bytes).not.toContain('"saidBy":"A name"')
})

test('restoreBackup(wanted) of makeBackup(wanted) gives the same log, photos and nothing else', async () => {
  const backup = await filledBackup(folders)
  const { target } = folders
  expect(await restoreBackup({ from: backup, into: target, named: false, now: noon })).toMatchObject({
    ok: true,
  })
  expect(await verifyIn(target)).toEqual(await verifyIn(folders.data))
  expect(filesIn(target)).toEqual(['inchwater.db', 'photos/ab/abcd.jpg', 'photos/plate.jpg'])
  expect(readFileSync(path.join(target, 'photos/ab/abcd.jpg'))).toEqual(Buffer.alloc(30_000, 7))
  expect(readdirSync(folders.root).sort()).toEqual(['backups', 'data', 'target'])
  // The server opens it as it opens its own.
  expect(migrate(databaseFile(target))).toEqual([])
})

test('a back-up made while others append without a pause is whole, has every batch whole, and holds nobody up', async () => {
  const program = mkdtempSync(path.join(tmpdir(), 'writers-'))
  const writer = buildWriter(program)
  const file = databaseFile(folders.data)
  migrate(file)
  const writers = ['one', 'two'].map((name) => startWriter(writer, file, name, 25))
  await Promise.all(writers.map(({ ready }) => ready))
  for (const { go } of writers) go()
  const ended = () => writers.reduce((sum, { ended }) => sum + ended.size, 0)
  while (ended() < 20) await sleep(5)
  const backups: string[] = []
  for (let turn = 0; turn < 4; turn++) {
    const before = ended()
    const now = new Date(noon.getTime() + turn * 1000)
    const made = await makeBackup({ dataFolder: folders.data, into: folders.backups, now })
    if (!made.ok) throw new Error(made.problem.message)
    backups.push(made.value.folder)
    // Whatever was acknowledged before it began is in it.
    expect(made.value.manifest.log.entries).toBeGreaterThanOrEqual(25 * before)
    while (ended() === before) await sleep(5)
  }
  for (const { child } of writers) child.kill('SIGKILL')
  await Promise.all(writers.map(({ over }) => over))
  rmSync(program, { recursive: true })
  for (const backup of backups) {
    const db = new Database(path.join(backup, 'inchwater.db'), { readonly: true })
    const verified = await openLog({ db, kinds: smallKinds, now: () => noon }).verify()
    db.close()
    expect(verified.trouble).toBeUndefined()
    expect(verified.entries % 25).toBe(0)
  }
}, 60_000)

test('makeBackup(wanted) of a log that does not fit says which entry, and gives the copy no name', async () => {
  await fillData(folders.data)
  const db = new Database(databaseFile(folders.data))
  tamper(db, "UPDATE LogContent SET bytes = replace(bytes, 'Remark 7 ', 'Remark 8 ') WHERE seq = 8")
  db.close()
  expect(await makeBackup({ dataFolder: folders.data, into: folders.backups, now: noon })).toMatchObject({
    ok: false,
    problem: {
      code: 'database-damaged',
      message: expect.stringContaining('The content of entry 8 was changed'),
    },
  })
  expect(readdirSync(folders.backups)).toEqual(['inchwater-2026-01-12T120000Z.unfinished'])
})

test('npm run backup says what is in it, where it is, and the hash to keep', async () => {
  await fillData(folders.data)
  const { entries, headHash } = await verifyIn(folders.data)
  const said: string[] = []
  expect(await backupCommand([folders.backups], folders.data, (line) => said.push(line), noon)).toBe(0)
  expect(said).toEqual([
    `The back-up is whole: ${entries} entries of the log, 0 people, 2 photos.`,
    `It is in ${path.join(folders.backups, 'inchwater-2026-01-12T120000Z')}`,
    `Keep this elsewhere to compare with later: npm run verify-log -- --expect ${entries}:${headHash}`,
  ])
})

test('npm run backup says what is wrong and makes none: nothing said, no data, a file in the way, made twice at once', async () => {
  const said: string[] = []
  const run = (...args: string[]) => backupCommand(args, folders.data, (line) => said.push(line), noon)
  expect(await run()).toBe(64)
  expect(await run('--help')).toBe(64)
  expect(await run(folders.backups)).toBe(1)
  expect(said.at(-1)).toMatch(/^There is no database at .*No back-up was made\.$/)
  expect(existsSync(folders.backups)).toBe(false)
  await fillData(folders.data)
  expect(await run(path.join(folders.data, 'session-secret'))).toBe(1)
  expect(said.at(-1)).toMatch(/^That is a file, and a folder is needed\..*No back-up was made\.$/)
  expect(await run(folders.backups)).toBe(0)
  expect(await run(folders.backups)).toBe(1)
  expect(said.at(-1)).toMatch(/is there already\. Wait a second/)
})

test('a picture that is damaged or missing where the server keeps it is named, and the back-up is made all the same', async () => {
  await fillData(folders.data)
  const db = new Database(databaseFile(folders.data))
  const note = db.prepare(
    `INSERT INTO "Picture" ("sha256", "storedSha256", "mediaType", "width", "height", "bytes", "heldSince")
     VALUES (?, ?, 'image/jpeg', 1, 1, 3, '2026-01-12')`,
  )
  const names = ['a', 'b', 'c'].map((letter) => letter.repeat(64))
  for (const [place, name] of names.entries()) {
    const bytes = Buffer.from([1, 2, place])
    await writePictureFile(folders.data, name, bytes)
    note.run(name, sha256Of(bytes))
  }
  db.close()
  writeFileSync(pictureFile(folders.data, names[1]!), Buffer.from([1, 2, 9]))
  rmSync(pictureFile(folders.data, names[2]!))
  const said: string[] = []
  expect(await backupCommand([folders.backups], folders.data, (line) => said.push(line), noon)).toBe(0)
  expect(said.slice(1, 3)).toEqual([
    `photos/bb/${names[1]} is damaged where the server keeps it, and was copied as it is.`,
    `The picture ${names[2]} is noted, but its file is not there.`,
  ])
})
