import { createHash } from 'node:crypto'
import { existsSync, mkdirSync } from 'node:fs'
import path from 'node:path'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { databaseFile, theLog } from '@/lib/server/database'
import { importRecords } from '@/lib/server/log/importRecords'
import { openData } from '@/lib/server/openData'
import { createPerson } from '@/lib/server/people/createPerson'
import { listPeople } from '@/lib/server/people/list'
import { store } from '@/lib/server/people/store'
import { demoRecords, demoSeed } from './company'
import { readMarker, writeMarker } from './marker'
import { demoPeople } from './people'

/** The demo can't be loaded; the message is a sentence for whoever started it. */
export class DemoNotLoaded extends Error {
  override name = 'DemoNotLoaded'
}

/** `found` means that it was there already, and `older` that it was and is another version's. */
export type Loading = 'loaded' | 'found' | 'older'

/**
 * Puts the demo company into a folder, unless it is there: its people, then its records in the order in which they
 * were said, through the same door as everybody's. What was broken off is taken up again.
 *
 * The demo's passwords are known to everybody, so a folder with any other database in it is refused untouched.
 *
 * @param records for tests
 * @throws DemoNotLoaded when the folder is another database's, or a record is not accepted
 */
export async function loadDemo(
  folder: string,
  say: (line: string) => void = console.log,
  records: readonly RecordEnvelope[] = demoRecords(demoSeed),
): Promise<Loading> {
  const at = path.resolve(folder)
  const company = createHash('sha256').update(JSON.stringify(records)).digest('hex')
  const hasDatabase = existsSync(databaseFile(at))
  const found = hasDatabase ? readMarker(at) : undefined
  if (hasDatabase && found === undefined) {
    throw new DemoNotLoaded(
      `${at} holds a database that is not the demo’s. Nothing was changed. Choose an empty folder: INCHWATER_DEMO_DATA=…`,
    )
  }
  if (found?.loaded) return found.company === company ? 'found' : 'older'
  if (found !== undefined && found.company !== company) {
    throw new DemoNotLoaded(
      `${at} holds a half-loaded demo of another version. Delete that folder and start again.`,
    )
  }

  say('Loading the demo company …')
  mkdirSync(at, { recursive: true, mode: 0o700 })
  writeMarker(at, { company, loaded: false })
  openData(at)
  await addPeople()
  await addRecords(records)
  writeMarker(at, { company, loaded: true })
  say(`  ${records.length} records`)
  return 'loaded'
}

async function addPeople(): Promise<void> {
  const there = new Set(listPeople(store().database).map(({ id }) => id))
  for (const { id, name, role, password } of Object.values(demoPeople)) {
    if (there.has(id)) continue
    const created = await createPerson({ id, name, role, password })
    if (!created.ok) throw new DemoNotLoaded(created.problem.message)
  }
}

async function addRecords(records: readonly RecordEnvelope[]): Promise<void> {
  const roles = new Map(Object.values(demoPeople).map(({ id, role }) => [id, role]))
  const last = Math.max(...records.map(({ saidAt }) => Date.parse(saidAt)))
  const { leftOut } = await importRecords(
    theLog(),
    records.map((record) => JSON.stringify(record)),
    {
      senderOf: (id) => {
        const role = roles.get(id)
        return role && { id, role }
      },
      // A machine whose clock is behind the demo's last day still gets the whole demo.
      now: () => new Date(Math.max(Date.now(), last)),
    },
  )
  const first = leftOut[0]
  if (first !== undefined) {
    throw new DemoNotLoaded(
      `The log did not take ${leftOut.length} of the demo’s records. The first is record ${first.line}: ${first.sentence}`,
    )
  }
}
