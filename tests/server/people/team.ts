import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach } from 'vitest'
import type { Role } from '@/lib/records/envelope'
import { databaseFile } from '@/lib/server/database'
import { addressHeader } from '@/lib/server/http/address'
import { createPerson } from '@/lib/server/people/createPerson'
import { store } from '@/lib/server/people/store'
import { migrate } from '@/prisma/migrate'

/** Before each test a new data folder with an empty database in it; everything of it is gone after. */
export function withFreshData(): void {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'people-'))
    process.env.INCHWATER_DATA = folder
    migrate(databaseFile(folder))
  })
  afterEach(async () => {
    await store().close()
    rmSync(folder, { recursive: true })
    delete process.env.INCHWATER_DATA
  })
}

export const password = 'three plain words'

/** A person of the team, all with the same password. Answers the id. */
export async function add(name: string, role: Role): Promise<string> {
  const added = await createPerson({ name, role, password })
  if (!added.ok) throw new Error(added.problem.message)
  return added.value.id
}

type Sent = { cookie?: string; from?: string; origin?: string; scheme?: 'http' | 'https'; body?: unknown }

/** A request as the door hands it on, from a page of our own. */
export function send(
  path: string,
  { cookie, from = '192.0.2.1', origin, scheme = 'http', body = {} }: Sent = {},
): Request {
  const own = `${scheme}://localhost`
  const headers = new Headers({
    [addressHeader]: from,
    origin: origin ?? own,
    'content-type': 'application/json',
  })
  if (cookie) headers.set('cookie', cookie)
  return new Request(`${own}${path}`, { method: 'POST', headers, body: JSON.stringify(body) })
}

export function read(path: string, cookie = ''): Request {
  return new Request(`http://localhost${path}`, { headers: cookie ? { cookie } : {} })
}

/** The cookies that an answer sets, as the browser sends them back. */
export function cookiesOf(answer: Response): string {
  const pairs = answer.headers.getSetCookie().map((cookie) => cookie.split(';')[0]!)
  return pairs.filter((pair) => !pair.endsWith('=')).join('; ')
}
