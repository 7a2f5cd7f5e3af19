import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { batchAnswer } from '@/lib/records/answer'
import type { RecordEnvelope, Role } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { makeToken } from '@/lib/server/api/tokens'
import { theLog } from '@/lib/server/database'
import { forgetGuesses } from '@/lib/server/people/guesses'
import { type Person, requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { read, send } from '../people/team'
import { appHandlers, type Handler } from './appFiles'
import { oddForms } from './oddForms'
import { brokenJson, jsonText, oddValue } from './oddJson'
import { spoiledBatches } from './spoiledBatches'
import { askedFor, neverFits } from './spoiledRecords'
import { closeTeam, foundTeam, names, openCopy, removeTeam, saidBy, type Team } from './team'

/**
 * 10,000 bodies that no sound device sends, to every route that writes, from people who are signed in: no answer is
 * a fault of the server's (a route that throws is one, the server answers 500 to it), every refusal is a sentence,
 * and the log is afterwards what it was before.
 *
 * Nothing may be stored, because of how the bodies are made: a text that is no JSON; JSON without a record in it; or
 * records each of which was spoiled, as the last thing done to it, in a way that no schema or rule can let pass.
 */
const seed = 20260112
const inAll = 10_000

// Who somebody is was asked once for each cookie; asking 10,000 times would take most of the time and test nothing.
const known = new Map<string, Person>()
vi.mock('@/lib/server/people/session', async (original) => {
  const real = await original<typeof import('@/lib/server/people/session')>()
  return {
    ...real,
    async requireRole(request: Request, ...asked: Role[]) {
      const key = JSON.stringify([request.headers.get('cookie'), asked])
      const person = known.get(key) ?? (await real.requireRole(request, ...asked))
      if (!(person instanceof Response)) known.set(key, person)
      return person
    },
  }
})

let team: Team
let founded: Team
let onFile: RecordEnvelope[]
let handlers: ReadonlyMap<string, Handler>
let before: Awaited<ReturnType<ReturnType<typeof theLog>['verify']>>
let asked = 0
let programToken: string
beforeAll(async () => {
  founded = await foundTeam()
  team = openCopy(founded)
  handlers = await appHandlers()
  onFile = saidBy(team.ids.manager)
  const answer = await post('POST /api/records', 'manager', {
    bytes: jsonText({ sentAt: new Date().toISOString(), records: onFile }),
  })
  expect(answer.status).toBe(200)
  const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10)
  const made = makeToken(
    store().database,
    { name: 'Office', role: 'dispatcher', until: tomorrow },
    team.ids.manager,
    new Date(),
  )
  if (!made.ok) throw new Error(made.problem.message)
  programToken = made.value.token
  before = await theLog().verify()
  expect(before).toMatchObject({ entries: onFile.length })
  for (const role of ['technician', 'manager'] as const) {
    for (const roles of [[], [role]]) await requireRole(read('/', team.cookies[role]), ...roles)
  }
}, 60_000)
afterAll(async () => {
  await closeTeam()
  removeTeam(team)
  removeTeam(founded)
})
beforeEach(() => {
  asked = 0
})

/** What is sent, and from which address: waiting after wrong guesses is tried elsewhere, so each has its own. */
type Body = { bytes: string | Uint8Array<ArrayBuffer>; id?: string }

function post(route: string, as: 'technician' | 'manager', { bytes, id = '' }: Body): Promise<Response> {
  asked += 1
  const { address, handle } = handlers.get(route)!
  const from = `2001:db8:0:${asked.toString(16)}::/64`
  const { url, headers } = send(address.replace('[id]', 'somebody'), { cookie: team.cookies[as], from })
  forgetGuesses(store().database, { of: 'set-up', which: [] })
  if (route.includes('/api/v1/')) {
    headers.delete('cookie')
    headers.set('authorization', `Bearer ${programToken}`)
  }
  return handle(new Request(url, { method: 'POST', headers, body: bytes }), {
    params: Promise.resolve({ id }),
  })
}

const sentence = /^[A-Z“].*[.!?]$/s

/** Checks one answer, and gives what it says when it is no refusal. */
async function check(answer: Response): Promise<unknown> {
  expect(answer.status).toBeLessThan(500)
  const said = (await answer.json()) as { ok: boolean; value?: unknown; problem?: { message: string } }
  expect(said.ok).toBe(answer.ok)
  if (!said.ok) checkSentence(said.problem?.message)
  return said.value
}

function checkSentence(text = ''): void {
  expect(text).toMatch(sentence)
  expect(text.length).toBeLessThan(1000)
}

/** Sends that many bodies, one after the other. fast-check prints the smallest body that fails, and how to repeat it. */
async function every<T>(bodies: fc.Arbitrary<T>, numRuns: number, one: (body: T) => Promise<void>) {
  await fc.assert(fc.asyncProperty(bodies, one), { seed, numRuns })
  expect(asked).toBe(numRuns)
  expect(await theLog().verify()).toEqual(before)
}

const token = 'A'.repeat(43)
const password = 'not the right words'
/** Every other route that writes, with a form of its shape that it refuses all the same, or that changes a colleague. */
const forms: Readonly<Record<string, Record<string, unknown>>> = {
  'POST /api/auth/password': { current: password, password },
  'POST /api/auth/sign-in': { name: names.technician, password },
  'POST /api/auth/sign-out': {},
  'POST /api/auth/sign-out-everywhere': {},
  'POST /api/devices/end': { device: 'phone-1', personId: 'nobody' },
  'POST /api/hand-over': { sentAt: '2026-01-12T12:00:00Z', records: [{ id: 'a' }] },
  'POST /api/hand-over/done': {},
  'POST /api/hand-over/pictures/lost': { sha256: 'a'.repeat(64) },
  'POST /api/import/log': {},
  // No such position, so it is passed over.
  'POST /api/look-ups': {
    lookUps: [
      {
        mark: '0a8f3c52-1d5e-4b7a-9c3e-2f6d8e0b4a11',
        positionId: '01920000-0000-7000-8000-0000000000ff',
        day: '2026-01-12',
      },
    ],
  },
  'POST /api/people/[id]/deactivate': {},
  'POST /api/people/[id]/reactivate': {},
  'POST /api/people/[id]/role': { role: 'dispatcher' },
  'POST /api/people/[id]/sign-out-everywhere': {},
  'POST /api/people/invitations': { name: names.colleague, role: 'manager' },
  'POST /api/people/invitations/accept': { token, password },
  'POST /api/people/links': { token },
  'POST /api/people/resets': { personId: 'nobody' },
  'POST /api/people/resets/use': { token, password },
  'POST /api/set-aside/admit': { records: ['a'] },
  'POST /api/set-aside/refuse': { records: ['a'], reason: 'Nobody knows what it is.' },
  'POST /api/tokens': { name: 'Office scheduler', role: 'dispatcher', until: '2026-12-31' },
  'POST /api/tokens/[id]/end': {},
  'POST /api/v1/cases': { furnaceId: 'nobody', complaint: 'No heat', circuit: 'proving circuit' },
  'POST /api/set-up': { code: 'AAAAA-AAAAA-AAAAA-AAAAA', name: names.colleague, password },
}
const perForm = 250
const perRecordsRoute = inAll - perForm * Object.keys(forms).length

/** They take pictures and no forms: tests/server/photos and tests/server/devices try them. */
const takePictures = ['PUT /api/photos/[sha256]', 'PUT /api/hand-over/pictures/[sha256]']

test('every route that writes is tried', () => {
  const writes = [...handlers.keys()].filter(
    (route) => !route.startsWith('GET') && !takePictures.includes(route),
  )
  expect([...Object.keys(forms), 'POST /api/records'].sort()).toEqual(writes.sort())
})

test.each(Object.entries(forms))(
  `%s answers ${perForm} random bodies with no fault`,
  async (route, form) => {
    const ids = fc.oneof(
      fc.constantFrom(team.ids.colleague, 'nobody', '', '__proto__', '../records', '\u0000', "' OR 1=1 --"),
      fc.string({ unit: 'binary' }),
    )
    await every(fc.record({ bytes: oddForms(form), id: ids }), perForm, async (body) => {
      await check(await post(route, 'manager', body))
    })
  },
  60_000,
)

const everyRule = [
  'record shape',
  'own records only',
  'one id, one record',
  'clock ahead',
  'known kind',
  'known version',
  'role',
  'body shape',
  'no reference to itself',
  'no general-purpose switch',
  'a factory label needs a factory part',
  'only like joins like',
  'a dispute needs new evidence',
  'a withholding stands',
  'only personal data can be withheld',
  'a case is on a furnace',
  'it belongs to its case',
  'a finding of the catalogue',
  'a cause of the catalogue',
  'a lifting lifts a notice',
  'a baseline is a reading',
]

test('what a spoiled record is made with is right: each of it alone spoils a record that is on file', () => {
  for (const { kind, version, body } of onFile) {
    const schema = recordKinds[kind]!.versions[version]!
    expect(schema.safeParse(body)).toMatchObject({ success: true })
    for (const field of Object.keys(body)) {
      for (const value of neverFits) {
        expect([kind, field, schema.safeParse({ ...body, [field]: value }).success]).toEqual([
          kind,
          field,
          false,
        ])
      }
    }
    const asked = askedFor({ kind, version })
    expect(asked.length).toBeGreaterThan(0)
    for (const field of asked) {
      const { [field]: _, ...rest } = body
      expect([kind, field, schema.safeParse(rest).success]).toEqual([kind, field, false])
    }
  }
})

test(`POST /api/records answers ${perRecordsRoute} random bodies with no fault, and stores nothing`, async () => {
  const bodyFrom = (role: 'technician' | 'manager') => {
    const otherPerson = team.ids[role === 'manager' ? 'technician' : 'manager']
    const text = spoiledBatches({ onFile, sender: { id: team.ids[role], role }, otherPerson })
    const bytes = fc.oneof(
      { weight: 16, arbitrary: text },
      { weight: 1, arbitrary: oddValue.map(jsonText) },
      { weight: 1, arbitrary: brokenJson(text) },
    )
    return fc.record({ role: fc.constant(role), bytes })
  }
  const outcomes = new Set<string>()
  await every(
    fc.oneof(bodyFrom('technician'), bodyFrom('manager')),
    perRecordsRoute,
    async ({ role, bytes }) => {
      const answer = await post('POST /api/records', role, { bytes })
      outcomes.add(String(answer.status))
      const value = await check(answer)
      if (value === undefined) return
      for (const one of batchAnswer.parse(value).answers) {
        expect(one.outcome).not.toBe('stored')
        if (one.outcome === 'refused') checkSentence(one.sentence)
        outcomes.add(one.outcome === 'refused' ? one.rule : one.outcome)
      }
    },
  )
  // They come far: every rule is met, from the door to the rules of single kinds.
  const met = [...everyRule, 'waiting for', '200', '400', '413']
  expect(met.filter((outcome) => !outcomes.has(outcome))).toEqual([])
}, 120_000)
