/**
 * Fills a folder with a team's log that has many positions in it, or adds reports to the one that is there. Arguments:
 * the folder, how many positions, and how many reports beyond those of the positions.
 */
import { v7 as uuidv7 } from 'uuid'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { theLog } from '@/lib/server/database'
import { openData } from '@/lib/server/openData'
import { createPerson } from '@/lib/server/people/createPerson'
import { listPeople } from '@/lib/server/people/list'
import { store } from '@/lib/server/people/store'
import { manyPeople } from './manyPeople'

const [folder = '', positionsWanted = '0', reportsWanted = '0'] = process.argv.slice(2)
openData(folder)
const { technician } = manyPeople
if (!listPeople(store().database).some(({ id }) => id === technician.id)) await createPerson(technician)

const said = (kind: string, body: Record<string, unknown>): RecordEnvelope => {
  const at = new Date()
  return {
    id: uuidv7(),
    kind,
    version: 1,
    body,
    saidAt: at.toISOString(),
    author: technician.id,
    device: 'desk-1',
  }
}
const circuit = { kind: 'one-port', between: 'port and room', tap: 'collector box', sense: 'suction' }
const report = (positionId: string, hundredths: number) =>
  said('report', {
    positionId,
    action: 'closes',
    limit: 'nominal',
    sense: 'suction',
    unit: 'inH2O',
    decimals: 2,
    kind: 'one-port',
    between: 'port and room',
    tap: 'collector box',
    stage: 'low fire',
    revisionRange: {},
    serialRange: {},
    elevationBand: {},
    pascals: (hundredths / 100) * 249.08891,
    asWritten: `0.${hundredths}`,
    source: 'parts listing',
  })
/** Invented syllables, so that a name resembles nobody's and no two are alike. */
const syllables = [
  'bar',
  'fen',
  'gol',
  'hax',
  'kel',
  'lum',
  'mor',
  'nad',
  'pell',
  'quor',
  'sten',
  'tavo',
  'urb',
  'wex',
]
const word = (n: number): string =>
  syllables[n % 14]! + syllables[Math.floor(n / 14) % 14]! + syllables[Math.floor(n / 196) % 14]!

async function append(records: readonly RecordEnvelope[]): Promise<void> {
  const answers = await theLog().appendRecords({ sentAt: new Date().toISOString(), records }, technician)
  const refused = answers.find(({ outcome }) => outcome !== 'stored')
  if (refused !== undefined) throw new Error(JSON.stringify(refused))
}

const positions: string[] = []
const count = Number(positionsWanted)
for (let made = 0; made < count; ) {
  const maker = said('maker', { name: `Maker ${word(made)}` })
  const batch = [maker]
  for (let line = 0; line < 100 && made < count; line++) {
    const range = said('equipment range', {
      makerId: maker.body && maker.id,
      name: `${word(made + 7)} ${line}`,
      modelPatterns: [`${word(made).slice(0, 3).toUpperCase()}${made}-*`],
      fuel: 'either',
      heat: 'not stated',
    })
    batch.push(range)
    for (const stage of ['low fire', 'high fire', 'single stage', 'not stated']) {
      const position = said('position', { rangeId: range.id, name: `${stage} switch`, stage, ...circuit })
      positions.push(position.id)
      batch.push(position)
      if (made % 2 === 0) batch.push(report(position.id, 20 + (made % 70)))
      made += 1
    }
  }
  await append(batch)
}
const known =
  positions.length > 0
    ? positions
    : store()
        .database.prepare<[], string>(`SELECT "id" FROM "LogEntry" WHERE "kind" = 'position'`)
        .pluck()
        .all()
for (let made = 0; made < Number(reportsWanted); ) {
  const batch: RecordEnvelope[] = []
  while (batch.length < 900 && made < Number(reportsWanted)) {
    batch.push(report(known[(made * 7) % known.length]!, 20 + (made % 70)))
    made += 1
  }
  await append(batch)
}
await store().close()
