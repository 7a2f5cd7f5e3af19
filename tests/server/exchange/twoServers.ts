import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach } from 'vitest'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { closeLogs, databaseFile, theLog } from '@/lib/server/database'
import { exportLog } from '@/lib/server/exchange/exportLog'
import { importLog } from '@/lib/server/exchange/importLog'
import { openSnapshot } from '@/lib/server/exchange/snapshot'
import { openTables } from '@/lib/server/log/tables'
import { type Verification, verify } from '@/lib/server/log/verify'
import { createPerson } from '@/lib/server/people/createPerson'
import { type ListedPerson, listPeople } from '@/lib/server/people/list'
import { store } from '@/lib/server/people/store'
import { migrate } from '@/prisma/migrate'
import { saidBy } from '../whole/team'

export const noon = new Date('2026-01-12T12:00:00.000Z')

/** A server's data folder, with a manager in it. */
export type Server = { folder: string; managerId: string }

/** Before each test a server with a manager; more are made with `newServer`. All are gone after. */
export function withServers(): { newServer(): Promise<Server> } {
  let folders: string[] = []
  beforeEach(() => {
    folders = []
  })
  afterEach(async () => {
    closeLogs()
    for (const folder of folders) {
      await store(folder).close()
      rmSync(folder, { recursive: true })
    }
    delete process.env.INCHWATER_DATA
  })
  return {
    async newServer() {
      const folder = mkdtempSync(path.join(tmpdir(), 'server-'))
      folders.push(folder)
      process.env.INCHWATER_DATA = folder
      migrate(databaseFile(folder))
      const added = await createPerson({ name: 'Mara Otell', role: 'manager', password: 'three plain words' })
      if (!added.ok) throw new Error(added.problem.message)
      return { folder, managerId: added.value.id }
    },
  }
}

/** Adds records as their manager, and fails unless all of them are stored. */
export async function say({ folder, managerId }: Server, records: readonly RecordEnvelope[]): Promise<void> {
  const sender = { id: managerId, role: 'manager' as const }
  const answers = await theLog(folder).appendRecords({ sentAt: new Date().toISOString(), records }, sender)
  const left = answers.filter(({ outcome }) => outcome !== 'stored')
  if (left.length > 0) throw new Error(JSON.stringify(left))
}

export const record = (
  author: string,
  kind: string,
  body: Record<string, unknown>,
  version = recordKinds[kind]!.version,
): RecordEnvelope => ({
  id: uuidv7(),
  kind,
  version,
  body,
  saidAt: new Date().toISOString(),
  author,
  device: 'desk-1',
})

/** Every kind of record, and withholdings that take two fields of one record and one of another, one after the other. */
export async function fill(server: Server): Promise<RecordEnvelope[]> {
  const said = saidBy(server.managerId)
  await say(server, said)
  const furnace = said.find(({ kind }) => kind === 'furnace')!
  const request = said.find(({ kind }) => kind === 'rating request')!
  const withhold = (id: string, fields: string[]) =>
    record(server.managerId, 'withholding', { record: id, fields, reason: 'It named a customer.' })
  await say(server, [
    withhold(furnace.id, ['siteLabel']),
    withhold(request.id, ['note']),
    withhold(furnace.id, ['note']),
  ])
  return said
}

/** One switch position of which four sources name two numbers; further reports of its first number. */
export async function fillDispute(server: Server, further: Record<string, unknown>[] = []): Promise<void> {
  const said = (kind: string, body: Record<string, unknown>) => record(server.managerId, kind, body)
  const maker = said('maker', { name: 'Orrinmoor' })
  const range = said('equipment range', {
    makerId: maker.id,
    name: 'OM Ridge',
    modelPatterns: ['OMR-80'],
    fuel: 'natural gas',
    heat: 'condensing',
  })
  const at = { kind: 'one-port', between: 'port and room', tap: 'collector box' }
  const position = said('position', {
    rangeId: range.id,
    name: 'Low fire',
    stage: 'low fire',
    sense: 'suction',
    ...at,
  })
  const report = (pascals: number, from: Record<string, unknown>) =>
    said('report', {
      positionId: position.id,
      asWritten: `${pascals} Pa`,
      action: 'closes',
      limit: 'nominal',
      pascals,
      sense: 'suction',
      unit: 'Pa',
      decimals: 0,
      ...at,
      stage: 'low fire',
      revisionRange: {},
      serialRange: {},
      elevationBand: {},
      ...from,
    })
  const call = (organisation: string) => ({ kind: 'call reference', organisation, reference: 'T-1' })
  const page = (name: string) => ({ kind: 'document', name, page: '7' })
  await say(server, [
    maker,
    range,
    position,
    report(150, { source: 'current literature', saidOn: '2025-02-03', proof: page('ZQ 12') }),
    report(150, { source: 'factory support', saidOn: '2025-01-02', proof: call('Orrinmoor line') }),
    report(162, { source: 'distributor', saidOn: '2024-03-01', proof: call('Hallam Supply') }),
    report(162, { source: 'older literature', saidOn: '2019-05-06', proof: page('ZQ 3') }),
    ...further.map((each) => report(150, each)),
  ])
}

export function exported({ folder }: Server): string {
  const snapshot = openSnapshot(recordKinds, folder)
  try {
    return [...exportLog(snapshot, noon)].join('')
  } finally {
    snapshot.close()
  }
}

export async function takenIn({ folder, managerId }: Server, text: string) {
  const file = path.join(folder, 'document.json')
  writeFileSync(file, text)
  return importLog(file, { kinds: recordKinds, by: managerId, now: noon, folder })
}

/** Every row of both tables of the log. */
export function rowsOf({ folder }: Server): unknown[] {
  const db = new Database(databaseFile(folder), { readonly: true })
  try {
    return db.prepare('SELECT * FROM LogEntry JOIN LogContent USING (seq) ORDER BY seq').all()
  } finally {
    db.close()
  }
}

export async function verified({ folder }: Server): Promise<Verification> {
  const db = new Database(databaseFile(folder))
  try {
    return await verify(openTables(db), () => {})
  } finally {
    db.close()
  }
}

export const peopleOf = ({ folder }: Server): ListedPerson[] => listPeople(store(folder).database)
