import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { v7 as uuidv7 } from 'uuid'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import type { RecordEnvelope, Role } from '@/lib/records/envelope'
import { roles } from '@/lib/records/envelope'
import { closeLogs, databaseFile } from '@/lib/server/database'
import { endListening } from '@/lib/server/live/live'
import { changeActive } from '@/lib/server/people/changes'
import { store } from '@/lib/server/people/store'
import { migrate } from '@/prisma/migrate'
import { sampleRecords } from '../../records/samples'
import { add, cookiesOf, password, send } from '../people/team'

/** Who can ask: nobody, somebody who was taken off the team but kept the cookie, or a person of a role. */
export const callers = ['nobody', 'taken off', ...roles] as const
export type Caller = (typeof callers)[number]

/** A server's data with a person of each role signed in, a colleague who is not, and one who was taken off. */
export type Team = {
  folder: string
  ids: Record<Exclude<Caller, 'nobody'> | 'colleague', string>
  cookies: Record<Caller, string>
}

export const names: Record<Role | 'colleague' | 'taken off', string> = {
  manager: 'Mara Otell',
  dispatcher: 'Ilse Quandt',
  technician: 'Jonas Merrill',
  colleague: 'Tove Arling',
  'taken off': 'Piet Oskamp',
}

/** Makes the team in a new folder, and leaves it closed. */
export async function foundTeam(): Promise<Team> {
  const folder = mkdtempSync(path.join(tmpdir(), 'whole-'))
  openFolder(folder)
  migrate(databaseFile(folder))
  const team: Team = {
    folder,
    ids: { manager: '', dispatcher: '', technician: '', colleague: '', 'taken off': '' },
    cookies: { nobody: '', manager: '', dispatcher: '', technician: '', 'taken off': '' },
  }
  for (const role of roles) team.ids[role] = await add(names[role], role)
  team.ids.colleague = await add(names.colleague, 'technician')
  team.ids['taken off'] = await add(names['taken off'], 'manager')
  for (const caller of [...roles, 'taken off'] as const) {
    team.cookies[caller] = cookiesOf(await signIn(send('/', { body: { name: names[caller], password } })))
  }
  changeActive(store().database, team.ids['taken off'], false, team.ids.manager, new Date())
  await closeTeam()
  return team
}

/** Copies a closed team into a folder of its own, and opens it: the server's routes now answer for it. */
export function openCopy(team: Team): Team {
  const folder = mkdtempSync(path.join(tmpdir(), 'whole-'))
  cpSync(team.folder, folder, { recursive: true })
  openFolder(folder)
  return { ...team, folder }
}

const openFolder = (folder: string): void => {
  process.env.INCHWATER_DATA = folder
}

export async function closeTeam(): Promise<void> {
  endListening()
  closeLogs()
  await store().close()
  delete process.env.INCHWATER_DATA
}

export const removeTeam = ({ folder }: Team): void => rmSync(folder, { recursive: true })

/** Everything that is in the database, except the count of wrong guesses, which a refusal may raise. */
export function everythingIn({ folder }: Team): string {
  const { database } = store(folder)
  const tables = database
    .prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name <> 'WrongGuesses'")
    .pluck()
    .all()
  return JSON.stringify(tables.map((table) => [table, database.prepare(`SELECT * FROM "${table}"`).all()]))
}

/** A record of every kind, as somebody says it just now: the stored samples under fresh ids, in their order. */
export function saidBy(author: string): RecordEnvelope[] {
  const fresh = new Map(sampleRecords.map(({ id }) => [id, uuidv7()]))
  const text = JSON.stringify(sampleRecords).replace(/"([0-9a-f-]{36})"/g, (whole, id: string) =>
    fresh.has(id) ? `"${fresh.get(id)}"` : whole,
  )
  return (JSON.parse(text) as RecordEnvelope[]).map(({ id, kind, version, body }) => ({
    id,
    kind,
    version,
    body,
    saidAt: new Date().toISOString(),
    author,
    device: 'device-1',
  }))
}
