import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { GET } from '@/app/api/changes/route'
import { makeBackup } from '@/lib/server/backup/makeBackup'
import { restoreBackup } from '@/lib/server/backup/restoreBackup'
import { closeLogs, databaseFile, theLog } from '@/lib/server/database'
import { store } from '@/lib/server/people/store'
import { noteHeld } from '@/lib/server/photos/pictureTable'
import { migrate } from '@/prisma/migrate'

vi.mock('@/lib/server/people/session', () => ({
  requireRole: async () => ({ id: 'person-1', name: 'Person One', role: 'technician' }),
}))

let root = ''
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'restored-'))
  vi.stubEnv('INCHWATER_DATA', path.join(root, 'data'))
  migrate(databaseFile())
})
afterEach(async () => {
  await close()
  vi.unstubAllEnvs()
  rmSync(root, { recursive: true })
})
const close = async () => {
  closeLogs()
  await store().close()
}

async function say(name: string): Promise<void> {
  const saidAt = new Date().toISOString()
  const record = {
    id: uuidv7(),
    kind: 'maker',
    version: 1,
    body: { name },
    saidAt,
    author: 'person-1',
    device: 'd',
  }
  await theLog().appendRecords({ sentAt: saidAt, records: [record] }, { id: 'person-1', role: 'technician' })
}
type Page = {
  records: { body: { name: string } }[]
  next: number
  mark?: string
  more: boolean
  anew?: true
  pictures?: { news: unknown[]; next: number; mark?: string; anew?: true }
}
async function ask(after: number, mark?: string): Promise<Page> {
  return answerTo(`after=${after}${mark === undefined ? '' : `&mark=${mark}`}`)
}
async function askForPictures(after: number, mark?: string): Promise<Page['pictures']> {
  const query = `pictures=${after}${mark === undefined ? '' : `&picturesMark=${mark}`}`
  return (await answerTo(query)).pictures
}
async function answerTo(query: string): Promise<Page> {
  const response = await GET(new Request(`http://localhost/api/changes?${query}`))
  expect(response.status).toBe(200)
  return (await response.json()).value
}

test('after a back-up was restored, a device that knew more is told to begin anew, also once the log is as long again', async () => {
  await say('One')
  const data = path.join(root, 'data')
  const made = await makeBackup({ dataFolder: data, into: path.join(root, 'backups'), now: new Date() })
  if (!made.ok) throw new Error(made.problem.message)
  const known = await ask(0)
  expect(known.mark).toMatch(/^[0-9a-f]{64}$/)
  await say('Two')
  const { next, mark } = await ask(known.next, known.mark)
  expect([next, mark]).not.toContain(undefined)
  expect(await ask(next, mark)).toMatchObject({ records: [], next, mark, more: false })

  await close()
  expect(
    await restoreBackup({ from: made.value.folder, into: data, named: true, now: new Date() }),
  ).toMatchObject({
    ok: true,
  })
  migrate(databaseFile())
  const anew = { records: [], next: 0, more: true, anew: true }
  expect(await ask(next, mark)).toEqual(anew)
  // A device that knew no more than the back-up goes on as if nothing had happened.
  expect(await ask(known.next, known.mark)).toMatchObject({ next: known.next, mark: known.mark })
  await say('Another two')
  await say('Three')
  expect(await ask(next, mark)).toEqual(anew)
  expect((await ask(0)).records.map(({ body }) => body.name)).toEqual(['One', 'Another two', 'Three'])
})

test('after a back-up was restored that is older than a picture, a device that was told of it begins its news anew, also once there is as much', async () => {
  const hashOf = (name: string) => name.repeat(64).slice(0, 64)
  const hold = (name: string) => {
    const picture = {
      storedSha256: hashOf('0'),
      mediaType: 'image/jpeg',
      width: 60,
      height: 40,
      bytes: 9,
    } as const
    noteHeld(store().database, { ...picture, sha256: hashOf(name) }, new Date())
  }
  const newsOf = (...names: string[]) => names.map((name) => ({ sha256: hashOf(name), held: true }))
  hold('a')
  const data = path.join(root, 'data')
  const made = await makeBackup({ dataFolder: data, into: path.join(root, 'backups'), now: new Date() })
  if (!made.ok) throw new Error(made.problem.message)
  const known = await askForPictures(0)
  hold('b')
  hold('c')
  const later = await askForPictures(0)
  expect(later).toMatchObject({ news: newsOf('a', 'b', 'c'), next: 3 })

  await close()
  const restored = await restoreBackup({ from: made.value.folder, into: data, named: true, now: new Date() })
  expect(restored).toMatchObject({ ok: true })
  migrate(databaseFile())
  expect(await askForPictures(1, known?.mark)).toEqual({ ...known, news: [] })
  hold('d')
  // The last row says the same as it did, and is another.
  hold('c')
  expect(await askForPictures(3, later?.mark)).toMatchObject({
    news: newsOf('a', 'd', 'c'),
    next: 3,
    anew: true,
  })
  expect(await askForPictures(1, known?.mark)).toMatchObject({ news: newsOf('d', 'c'), next: 3 })
  expect(await askForPictures(1, known?.mark)).not.toHaveProperty('anew')
  // One that knows of no marks is answered as ever.
  expect(await askForPictures(3)).toMatchObject({ news: [], next: 3 })
})

test('an asker without a mark, or before the first entry, is answered as ever; a mark that is none is refused', async () => {
  expect(await ask(0)).toEqual({ records: [], next: 0, more: false })
  await say('One')
  expect((await ask(0)).records).toHaveLength(1)
  expect(await ask(7)).toMatchObject({ records: [], next: 7 })
  const response = await GET(new Request('http://localhost/api/changes?after=1&mark=none'))
  expect(response.status).toBe(400)
})
