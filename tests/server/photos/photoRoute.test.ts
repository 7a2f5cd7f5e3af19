import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { v7 as uuidv7 } from 'uuid'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { GET as changes } from '@/app/api/changes/route'
import { GET, PUT } from '@/app/api/photos/[sha256]/route'
import { POST as records } from '@/app/api/records/route'
import { batchAnswer } from '@/lib/records/answer'
import { mostPictureBytes } from '@/lib/records/kinds/photo'
import { theLog } from '@/lib/server/database'
import { store } from '@/lib/server/people/store'
import { pictureFile, sha256Of } from '@/lib/server/photos/pictureFiles'
import { heldPictures, noteGone } from '@/lib/server/photos/pictureTable'
import { settlePictures } from '@/lib/server/photos/settlePictures'
import { read, send } from '../people/team'
import { type Caller, closeTeam, foundTeam, openCopy, removeTeam, type Team } from '../whole/team'
import { pictureOf } from './somePictures'

let founded: Team
let team: Team
let furnaceId: string
let picture: Buffer
let sha256: string
beforeAll(async () => {
  founded = await foundTeam()
  picture = await pictureOf('jpeg')
  sha256 = sha256Of(picture)
}, 60_000)
beforeEach(async () => {
  team = openCopy(founded)
  furnaceId = await say('technician', 'furnace', {
    siteLabel: 'Mill Row 12',
    model: 'LF2-080-B',
    fuel: 'natural gas',
  })
})
afterEach(async () => {
  await closeTeam()
  removeTeam(team)
})
afterAll(() => removeTeam(founded))

type Person = 'technician' | 'dispatcher' | 'manager'

async function say(who: Person, kind: string, body: Record<string, unknown>): Promise<string> {
  const id = uuidv7()
  const said = {
    id,
    kind,
    version: 1,
    body,
    saidAt: new Date().toISOString(),
    author: team.ids[who],
    device: 'd1',
  }
  const sent = { sentAt: said.saidAt, records: [said] }
  const answer = await records(send('/api/records', { cookie: team.cookies[who], body: sent }))
  const { value } = (await answer.json()) as { value: unknown }
  expect(batchAnswer.parse(value).answers).toMatchObject([{ outcome: 'stored' }])
  return id
}

const photoOf = (bytes: Buffer) => ({
  sha256: sha256Of(bytes),
  mediaType: 'image/jpeg',
  width: 60,
  height: 40,
  bytes: bytes.length,
  shows: 'other',
  furnaceId,
})
const sayPhoto = (bytes = picture) => say('technician', 'photo', photoOf(bytes))

function put(bytes: Buffer, hash = sha256Of(bytes), caller: Caller = 'technician', type = 'image/jpeg') {
  const { url, headers } = send(`/api/photos/${hash}`, { cookie: team.cookies[caller] })
  headers.set('content-type', type)
  const request = new Request(url, { method: 'PUT', headers, body: new Uint8Array(bytes) })
  return PUT(request, { params: Promise.resolve({ sha256: hash }) })
}
const get = (hash = sha256, caller: Caller = 'dispatcher', query = '') =>
  GET(read(`/api/photos/${hash}${query}`, team.cookies[caller]), {
    params: Promise.resolve({ sha256: hash }),
  })

const codeOf = async (answer: Response) =>
  ((await answer.json()) as { problem?: { code: string } }).problem?.code
const statusAndCode = async (answer: Response) => [answer.status, await codeOf(answer)]

type News = { news: { sha256: string; held: boolean }[]; next: number; mark?: string; anew?: true }
async function newsAndMarkAfter(after: number, mark?: string): Promise<News> {
  const query = `after=0&pictures=${after}${mark === undefined ? '' : `&picturesMark=${mark}`}`
  const answer = await changes(read(`/api/changes?${query}`, team.cookies.technician))
  return ((await answer.json()) as { value: { pictures: News } }).value.pictures
}
async function newsAfter(after: number) {
  const { mark: _, ...news } = await newsAndMarkAfter(after)
  return news
}
const withhold = (record: string) =>
  say('manager', 'withholding', { record, fields: ['picture'], reason: 'A child is in it.' })
const filesHeld = () => {
  const folder = path.join(team.folder, 'photos')
  return existsSync(folder)
    ? readdirSync(folder, { recursive: true })
        .map(String)
        .filter((name) => name.length > 2)
    : []
}

test('bytes are taken in once a photo in the log names them, once, and kept under their hash in the data folder', async () => {
  expect(await statusAndCode(await put(picture))).toEqual([409, 'record-first'])
  expect(filesHeld()).toEqual([])
  await sayPhoto()
  const answer = await put(picture)
  expect(answer.status).toBe(200)
  const { value } = (await answer.json()) as { value: { sha256: string; storedSha256: string } }
  const kept = readFileSync(pictureFile(team.folder, sha256))
  expect(value).toMatchObject({ sha256, storedSha256: sha256Of(kept), mediaType: 'image/jpeg', width: 60 })
  expect(sha256Of(kept)).not.toBe(sha256)
  expect((await put(picture)).status).toBe(200)
  expect(filesHeld()).toEqual([path.join(sha256.slice(0, 2), sha256)])
  expect(await newsAfter(0)).toEqual({ news: [{ sha256, held: true }], next: 1 })
})

test('a picture is shown to the team as a picture and as nothing else, and kept by no cache', async () => {
  await sayPhoto()
  await put(picture)
  for (const query of ['', '?size=small']) {
    const answer = await get(sha256, 'dispatcher', query)
    expect(answer.status).toBe(200)
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'image/jpeg',
      'content-disposition': `inline; filename="${sha256.slice(0, 12)}.jpeg"`,
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    })
    expect((await answer.arrayBuffer()).byteLength).toBe(Number(answer.headers.get('content-length')))
  }
  for (const caller of ['nobody', 'taken off'] as const) expect((await get(sha256, caller)).status).toBe(401)
})

test('what is not held is said in a sentence, and a hash is all that may be asked for', async () => {
  await sayPhoto()
  expect(await statusAndCode(await get())).toEqual([404, 'not-here'])
  for (const odd of [
    '../inchwater.db',
    '..%2Finchwater.db',
    sha256.toUpperCase(),
    `${sha256}0`,
    '',
    '__proto__',
  ]) {
    expect([odd, ...(await statusAndCode(await get(odd)))]).toEqual([odd, 400, 'no-hash'])
    expect([odd, ...(await statusAndCode(await put(picture, odd)))]).toEqual([odd, 400, 'no-hash'])
  }
  expect(() => pictureFile(team.folder, '../inchwater.db')).toThrow(RangeError)
})

test('other bytes than announced, other kinds of files, and what is too long are refused, and nothing is kept', async () => {
  const gif = Buffer.from('GIF89a, and what follows')
  const long = Buffer.alloc(mostPictureBytes + 1)
  const twoThings = Buffer.concat([picture, Buffer.from('PK\u0003\u0004')])
  for (const bytes of [gif, twoThings]) await sayPhoto(bytes)
  expect(await statusAndCode(await put(Buffer.from('damaged'), sha256))).toEqual([400, 'other-bytes'])
  expect(await statusAndCode(await put(picture, sha256, 'technician', 'text/html'))).toEqual([
    415,
    'no-picture',
  ])
  expect(await statusAndCode(await put(gif))).toEqual([415, 'no-picture'])
  expect(await statusAndCode(await put(twoThings))).toEqual([422, 'more-than-a-picture'])
  expect(await statusAndCode(await put(long))).toEqual([413, 'too-long'])
  expect(filesHeld()).toEqual([])
  expect(heldPictures(store().database)).toEqual([])
})

test('a manager’s withholding takes the picture from the disk, keeps hash and record, and it is never taken in again', async () => {
  const [photoId, again] = [await sayPhoto(), await sayPhoto()]
  await put(picture)
  const withholdingId = await withhold(photoId)
  expect(filesHeld()).toEqual([])
  expect(await statusAndCode(await get())).toEqual([410, 'withheld'])
  // Also where another record names the same picture: the same child is in it.
  expect(await statusAndCode(await put(picture))).toEqual([410, 'withheld'])
  expect(theLog().lookup(photoId)).toMatchObject({
    body: { sha256 },
    withheld: { by: withholdingId, fields: ['picture'] },
  })
  expect(theLog().lookup(again)?.withheld).toBeUndefined()
  expect(await newsAfter(1)).toEqual({ news: [{ sha256, held: false }], next: 2 })
  expect((await theLog().verify()).trouble).toBeUndefined()
})

test('only a manager may withhold a picture, and nothing else of a photo but its words', async () => {
  const photoId = await sayPhoto()
  const answerTo = async (who: Person, fields: string[]) => {
    const saidAt = new Date().toISOString()
    const body = { record: photoId, fields, reason: 'A child is in it.' }
    const said = {
      id: uuidv7(),
      kind: 'withholding',
      version: 1,
      body,
      saidAt,
      author: team.ids[who],
      device: 'd1',
    }
    return theLog().appendRecords({ sentAt: saidAt, records: [said] }, { id: team.ids[who], role: who })
  }
  expect(await answerTo('technician', ['picture'])).toMatchObject([{ outcome: 'refused', rule: 'role' }])
  expect(await answerTo('dispatcher', ['picture'])).toMatchObject([{ outcome: 'refused', rule: 'role' }])
  expect(await answerTo('manager', ['sha256'])).toMatchObject([
    { outcome: 'refused', rule: 'only personal data can be withheld' },
  ])
})

test('a picture that is withheld while its bytes are on their way is not kept', async () => {
  const photoId = await sayPhoto()
  const large = await pictureOf('png', 1200, 900)
  const largeId = await sayPhoto(large)
  const [answer] = await Promise.all([
    put(large, sha256Of(large), 'technician', 'image/png'),
    withhold(largeId),
  ])
  expect(answer.status === 410 || (await get(sha256Of(large))).status === 410).toBe(true)
  expect(filesHeld()).toEqual([])
  expect(photoId).toBeDefined()
})

test('after a stop anywhere in between, the next start brings files, table and log together', async () => {
  const photoId = await sayPhoto()
  await put(picture)
  const file = pictureFile(team.folder, sha256)
  const kept = readFileSync(file)
  const state = () => [filesHeld().length, heldPictures(store().database)]

  // Between the file and the note: it is noted.
  store().database.prepare('DELETE FROM "Picture"').run()
  await settlePictures(new Date())
  expect(state()).toEqual([1, [sha256]])
  // Half-written: it goes.
  mkdirSync(path.join(team.folder, 'photos.unfinished'), { recursive: true })
  writeFileSync(path.join(team.folder, 'photos.unfinished', 'half'), kept.subarray(0, 20))
  await settlePictures(new Date())
  expect(existsSync(path.join(team.folder, 'photos.unfinished'))).toBe(false)
  expect(state()).toEqual([1, [sha256]])
  // The file is gone: devices are told, and one that has it sends it again.
  rmSync(file)
  await settlePictures(new Date())
  expect(state()).toEqual([0, []])
  expect(await newsAfter(3)).toEqual({ news: [{ sha256, held: false }], next: 4 })
  expect((await put(picture)).status).toBe(200)
  // Between a withholding and the file's going: it goes.
  const said = { record: photoId, fields: ['picture'], reason: 'A child is in it.' }
  const saidAt = new Date().toISOString()
  const record = {
    id: uuidv7(),
    kind: 'withholding',
    version: 1,
    body: said,
    saidAt,
    author: team.ids.manager,
    device: 'd1',
  }
  await theLog().appendRecords(
    { sentAt: saidAt, records: [record] },
    { id: team.ids.manager, role: 'manager' },
  )
  expect((await get()).status).toBe(410)
  await settlePictures(new Date())
  expect(state()).toEqual([0, []])
})

test('a file that the log does not name yet stays through a start, shown to nobody, and is noted once the log names it', async () => {
  const file = pictureFile(team.folder, sha256)
  mkdirSync(path.dirname(file), { recursive: true })
  writeFileSync(file, picture)
  await settlePictures(new Date())
  expect(readFileSync(file)).toEqual(picture)
  expect(await statusAndCode(await get())).toEqual([404, 'not-here'])
  await sayPhoto()
  await settlePictures(new Date())
  expect(heldPictures(store().database)).toEqual([sha256])
  expect((await get()).status).toBe(200)
})

test('a file that can’t be read is named and keeps no start back, and a device that has the picture mends it', async () => {
  const other = await pictureOf('jpeg', 60, 40, 7)
  for (const bytes of [picture, other]) {
    await sayPhoto(bytes)
    await put(bytes)
  }
  store().database.prepare('DELETE FROM "Picture"').run()
  const file = pictureFile(team.folder, sha256)
  writeFileSync(file, 'not a picture any more')
  const said = vi.spyOn(console, 'warn').mockImplementation(() => {})
  await settlePictures(new Date())
  expect(said.mock.calls).toEqual([[expect.stringContaining(file), expect.any(Error)]])
  said.mockClear()
  expect(heldPictures(store().database)).toEqual([sha256Of(other)])
  expect(await statusAndCode(await get())).toEqual([404, 'not-here'])
  expect((await put(picture)).status).toBe(200)
  expect((await get()).status).toBe(200)
})

test('a device that knows more than a restored server is told everything anew', async () => {
  await sayPhoto()
  await put(picture)
  expect(await newsAfter(7)).toEqual({ news: [{ sha256, held: true }], next: 1, anew: true })
})

test('each row of news has a mark of its own; who sends another than stands there is told everything anew', async () => {
  expect(await newsAndMarkAfter(0)).toEqual({ news: [], next: 0 })
  await sayPhoto()
  await put(picture)
  const { mark } = await newsAndMarkAfter(0)
  expect(mark).toMatch(/^[0-9a-f]{64}$/)
  expect(await newsAndMarkAfter(1, mark)).toEqual({ news: [], next: 1, mark })
  noteGone(store().database, sha256)
  expect(await newsAndMarkAfter(1, mark)).toMatchObject({ news: [{ sha256, held: false }], next: 2 })
  const later = await newsAndMarkAfter(2)
  expect(later.mark).not.toBe(mark)
  expect(await newsAndMarkAfter(1, later.mark)).toEqual({
    news: [true, false].map((held) => ({ sha256, held })),
    next: 2,
    mark: later.mark,
    anew: true,
  })
  const answer = await changes(read('/api/changes?pictures=1&picturesMark=none', team.cookies.technician))
  expect(answer.status).toBe(400)
})

test('random bytes under any name are refused with no fault, and nothing is kept', async () => {
  const spoiled = fc.uint8Array({ maxLength: 2000 }).map((bytes) => Buffer.from(bytes))
  const beginning = fc.nat(picture.length - 1).map((end) => picture.subarray(0, end))
  const flipped = fc.tuple(fc.nat(picture.length - 1), fc.integer({ min: 1, max: 255 })).map(([at, by]) => {
    const bytes = Buffer.from(picture)
    bytes[at]! ^= by
    return bytes
  })
  await fc.assert(
    fc.asyncProperty(fc.oneof(spoiled, beginning, flipped), async (bytes) => {
      await sayPhoto(bytes.length === 0 ? Buffer.from([0]) : bytes)
      const answer = await put(bytes)
      expect(answer.status).toBeLessThan(500)
      // A flipped bit may well leave a picture; whatever is kept can be shown.
      if (answer.status === 200) expect((await get(sha256Of(bytes))).status).toBe(200)
      else expect(await codeOf(answer)).toMatch(/^[a-z-]+$/)
    }),
    { numRuns: 60 },
  )
}, 60_000)
