import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { GET as changes } from '@/app/api/changes/route'
import { POST as records } from '@/app/api/records/route'
import { batchAnswer } from '@/lib/records/answer'
import { type RecordEnvelope, type Role, roles } from '@/lib/records/envelope'
import { permissionTable } from '@/lib/records/permissions'
import { recordKinds } from '@/lib/records/registry'
import { theLog } from '@/lib/server/database'
import { read, send } from '../people/team'
import { type Caller, closeTeam, foundTeam, openCopy, removeTeam, saidBy, type Team } from './team'

let founded: Team
let team: Team
/** One record of every kind, said by the manager: what the records of the others refer to. */
let onFile: RecordEnvelope[]
beforeAll(async () => {
  founded = await foundTeam()
  team = openCopy(founded)
  onFile = saidBy(team.ids.manager)
}, 60_000)
afterAll(async () => {
  await closeTeam()
  removeTeam(team)
  removeTeam(founded)
})

const post = (caller: Caller, said: RecordEnvelope[]) =>
  records(
    send('/api/records', {
      cookie: team.cookies[caller],
      body: { sentAt: new Date().toISOString(), records: said },
    }),
  )
const answersTo = async (caller: Caller, said: RecordEnvelope[]) => {
  const answer = await post(caller, said)
  expect(answer.status).toBe(200)
  return batchAnswer.parse(((await answer.json()) as { value: unknown }).value).answers
}
/** What is on file, said once more by somebody else. */
const saidAgainBy = (author: string) => onFile.map((record) => ({ ...record, id: uuidv7(), author }))

test('a manager may add a record of every kind there is', async () => {
  const answers = await answersTo('manager', onFile)
  expect(onFile.map(({ kind }, at) => [kind, answers[at]?.outcome])).toEqual(
    onFile.map(({ kind }) => [kind, 'stored']),
  )
  expect(new Set(onFile.map(({ kind }) => kind))).toEqual(new Set(Object.keys(recordKinds)))
})

test.each(roles)(
  'POST /api/records stores of a %s the kinds that the table says, and refuses the others',
  async (role) => {
    const said = saidAgainBy(team.ids[role])
    const answers = await answersTo(role, said)
    const mayAdd = new Map(permissionTable().map((row) => [row.kind, row.mayAdd]))
    expect(said.map(({ kind }, at) => [kind, answers[at]?.outcome])).toEqual(
      said.map(({ kind }) => [kind, mayAdd.get(kind)?.includes(role) ? 'stored' : 'refused']),
    )
    for (const [at, answer] of answers.entries()) {
      const kind = said[at]!.kind
      if (answer.outcome !== 'refused') continue
      expect(answer.rule).toBe('role')
      const who = mayAdd.get(kind)?.join(' or a ')
      expect(answer.sentence).toBe(
        `A ${role} may not add a record of the kind “${kind}”. Ask a ${who} to do it.`,
      )
      expect(theLog().lookup(answer.id)).toBeUndefined()
    }
  },
)

test.each(['nobody', 'taken off'] as const)(
  'POST /api/records stores no record of any kind of: %s',
  async (caller) => {
    const before = await theLog().verify()
    const author = caller === 'nobody' ? team.ids.technician : team.ids[caller]
    for (const record of saidAgainBy(author)) {
      expect([record.kind, (await post(caller, [record])).status]).toEqual([record.kind, 401])
    }
    expect(await theLog().verify()).toEqual(before)
  },
)

/** The kinds that GET /api/changes shows, and how many records of each. */
async function seenBy(role: Role): Promise<Map<string, number>> {
  const answer = await changes(read('/api/changes?limit=1000', team.cookies[role]))
  const { value } = (await answer.json()) as { value: { records: { kind: string }[]; more: boolean } }
  expect(value.more).toBe(false)
  return countByKind(value.records)
}

function countByKind(all: { kind: string }[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const { kind } of all) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return counts
}

/** The same by the table, counted in the log itself. */
function shownTo(role: Role): Map<string, number> {
  const seen = new Set(permissionTable().flatMap((row) => (row.maySee.includes(role) ? [row.kind] : [])))
  const everything = Object.keys(recordKinds).length
  const all = theLog().readChanges({ after: 0, role: 'manager', limit: 1000 }).records
  expect(new Set(all.map(({ kind }) => kind)).size).toBe(everything)
  return countByKind(all.filter(({ kind }) => seen.has(kind)))
}

test.each(roles)(
  'GET /api/changes shows a %s all records of the kinds that the table says, and no other',
  async (role) => {
    expect(await seenBy(role)).toEqual(shownTo(role))
  },
)

test('GET /api/changes hides a kind from a role as soon as the table says so', async () => {
  vi.spyOn(recordKinds.settlement!, 'maySee', 'get').mockReturnValue(['manager'])
  expect(shownTo('technician').has('settlement')).toBe(false)
  for (const role of roles) expect(await seenBy(role)).toEqual(shownTo(role))
})

test.each(['nobody', 'taken off'] as const)('GET /api/changes shows nothing to: %s', async (caller) => {
  const answer = await changes(read('/api/changes', team.cookies[caller]))
  expect(answer.status).toBe(401)
  expect(await answer.json()).not.toHaveProperty('value')
})
