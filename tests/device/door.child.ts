/**
 * A program of its own that stands at the log's door for one person, until it is killed. Arguments: the database, the
 * port, the person's id. It says `ready` and waits for a line; then it says `open` once it listens, and `batch` when a
 * batch has arrived and is about to be judged.
 */
import { once } from 'node:events'
import { writeSync } from 'node:fs'
import { createServer } from 'node:http'
import { json } from 'node:stream/consumers'
import Database from 'better-sqlite3'
import { recordKinds } from '@/lib/records/registry'
import { openLog } from '@/lib/server/log/openLog'

const [file = '', port = '', id = ''] = process.argv.slice(2)
const person = { id, name: 'Wenna', role: 'technician' as const }
const say = (line: string) => writeSync(1, `${line}\n`)

say('ready')
await once(process.stdin, 'data')
const log = openLog({ db: new Database(file), kinds: recordKinds, now: () => new Date() })
const server = createServer(async (request, response) => {
  const { pathname, searchParams } = new URL(request.url ?? '/', 'http://localhost')
  const answer = (value: unknown) => response.end(JSON.stringify({ ok: true, value }))
  if (pathname === '/api/auth/me') return answer(person)
  if (pathname === '/api/people') return answer([{ ...person, active: true }])
  if (pathname === '/api/changes') {
    const [after, limit] = ['after', 'limit'].map((name) => Number(searchParams.get(name))) as [
      number,
      number,
    ]
    return answer(log.readChanges({ after, limit, role: person.role }))
  }
  const batch = (await json(request)) as { sentAt: string; records: unknown[] }
  say('batch')
  answer({ answers: await log.appendRecords(batch, person) })
})
server.listen(Number(port), '127.0.0.1', () => say('open'))
