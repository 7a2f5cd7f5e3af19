/**
 * A program of its own that appends batches to a log until it is told to stop, or is killed. Arguments: the
 * database, a name for its records, how many records a batch holds, and how many batches to write (0: no end).
 * It says `ready` and waits for a line, then `begin N` before each batch and `end N` once it is acknowledged.
 */
import { once } from 'node:events'
import { writeSync } from 'node:fs'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { openLog } from '@/lib/server/log/openLog'
import { smallKinds } from './smallKinds'

const [file = '', name = '', size = '', count = ''] = process.argv.slice(2)
const person = { id: name, role: 'technician' as const }
// Written at once, so that nothing said is lost with the process.
const say = (line: string) => writeSync(1, `${line}\n`)

say('ready')
await once(process.stdin, 'data')
const log = openLog({ db: new Database(file), kinds: smallKinds, now: () => new Date() })
for (let batch = 1; batch <= (Number(count) || Number.POSITIVE_INFINITY); batch++) {
  const at = new Date().toISOString()
  const records = Array.from({ length: Number(size) }, (_, index) => ({
    id: uuidv7(),
    kind: 'remark',
    version: 2,
    body: { text: `${name} ${batch}.${index}`, saidBy: 'x'.repeat(200) },
    saidAt: at,
    author: name,
    device: 'desk-1',
  }))
  say(`begin ${batch}`)
  const answers = await log.appendRecords({ sentAt: at, records }, person)
  if (answers.some(({ outcome }) => outcome !== 'stored')) throw new Error(JSON.stringify(answers))
  say(`end ${batch}`)
}
process.exit(0)
