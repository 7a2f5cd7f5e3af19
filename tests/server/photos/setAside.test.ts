import { existsSync } from 'node:fs'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { GET as changes } from '@/app/api/changes/route'
import { POST as end } from '@/app/api/devices/end/route'
import { POST as handOver } from '@/app/api/hand-over/route'
import { POST as admit } from '@/app/api/set-aside/admit/route'
import { closeLogs, theLog } from '@/lib/server/database'
import { store } from '@/lib/server/people/store'
import { pictureFile, sha256Of } from '@/lib/server/photos/pictureFiles'
import { takePicture } from '@/lib/server/photos/takePicture'
import { add, cookiesOf, password, read, send, withFreshData } from '../people/team'
import { pictureOf } from './somePictures'

withFreshData()
afterEach(closeLogs)

const signedIn = async (name: string) => cookiesOf(await signIn(send('/', { body: { name, password } })))
const fromDesk = (request: Request) => {
  request.headers.set('inchwater-device', 'desk-1')
  request.headers.set('inchwater-waiting', '1')
  request.headers.set('inchwater-build', 'b1')
  return request
}

test('a withholding that was set aside with its device takes the picture from the disk once it is admitted', async () => {
  const mara = await add('Mara Otell', 'manager')
  await add('Ilse Quandt', 'manager')
  const [lost, other] = [await signedIn('Mara Otell'), await signedIn('Ilse Quandt')]
  await changes(fromDesk(read('/api/changes', lost)))
  const picture = await pictureOf('jpeg')
  const sha256 = sha256Of(picture)
  const saidAt = new Date().toISOString()
  const said = (kind: string, body: object) => ({
    id: uuidv7(),
    kind,
    version: 1,
    body,
    saidAt,
    author: mara,
    device: 'desk-1',
  })
  const house = said('furnace', { siteLabel: 'Mill Row 12', model: 'LF2-080-B', fuel: 'natural gas' })
  const size = { mediaType: 'image/jpeg', width: 60, height: 40, bytes: picture.length }
  const photo = said('photo', { sha256, ...size, shows: 'other', furnaceId: house.id })
  await theLog().appendRecords({ sentAt: saidAt, records: [house, photo] }, { id: mara, role: 'manager' })
  expect(await takePicture(sha256, picture, new Date())).toMatchObject({ ok: true })
  const file = pictureFile(store().dataFolder, sha256)
  expect(existsSync(file)).toBe(true)

  await end(send('/', { cookie: other, body: { device: 'desk-1', personId: mara } }))
  const withholding = said('withholding', {
    record: photo.id,
    fields: ['picture'],
    reason: 'A child is in it.',
  })
  await handOver(fromDesk(send('/', { cookie: lost, body: { sentAt: saidAt, records: [withholding] } })))
  expect(existsSync(file)).toBe(true)
  await admit(send('/', { cookie: other, body: { records: [withholding.id] } }))
  expect(theLog().pictureNamed(sha256)).toBe('withheld')
  expect(existsSync(file)).toBe(false)
})
