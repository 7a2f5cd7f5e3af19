import { afterAll, beforeAll, expect, test } from 'vitest'
import { GET as getLetter } from '@/app/api/letter/route'
import { GET as getHead } from '@/app/api/log/head/route'
import { letterParts } from '@/app/callbacks/letter/letterParts'
import { printable } from '@/app/callbacks/letter/printable'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { letterFigures } from '@/lib/records/view/letter/letterFigures'
import { theLog } from '@/lib/server/database'
import { pdfText, withoutBlanks } from '../../app/callbacks/letter/pdfText'
import { read } from '../people/team'
import { closeTeam, foundTeam, removeTeam, saidBy, type Team } from '../whole/team'

let team: Team

beforeAll(async () => {
  team = await foundTeam()
  process.env.INCHWATER_DATA = team.folder
  await theLog().appendRecords(
    { sentAt: new Date().toISOString(), records: saidBy(team.ids.manager) },
    { id: team.ids.manager, role: 'manager' },
  )
}, 60_000)
afterAll(async () => {
  await closeTeam()
  removeTeam(team)
})

const letter = (query: string, cookie = team.cookies.manager) =>
  getLetter(read(`/api/letter${query}`, cookie))
const thisMonth = () => monthName(monthNumber(Date.now()))

test('the PDF shows the letter that a device makes from the same log, with the hash of its newest entry', async () => {
  const answer = await letter(`?month=${thisMonth()}&ahead=-420`)
  expect(answer.status).toBe(200)
  expect(answer.headers.get('content-type')).toBe('application/pdf')
  expect(answer.headers.get('cache-control')).toBe('no-store')
  const text = pdfText(new Uint8Array(await answer.arrayBuffer()))

  const head: unknown = await (await getHead(read('/api/log/head', team.cookies.technician))).json()
  expect(head).toEqual({ ok: true, value: theLog().head() })
  const file = foldTeamFile(theLog().readChanges({ after: 0, role: 'manager', limit: 1000 }).records)
  const now = new Date().toISOString()
  const { rows, todos, standing } = letterParts(letterFigures(file, thisMonth(), now), file, {
    now,
    head: theLog().head(),
    minutesAhead: -420,
  })
  expect(theLog().head().seq).toBeGreaterThan(20)
  expect(rows.some(({ month }) => month !== '0' && month !== 'none')).toBe(true)
  for (const { words, month, before, change } of rows)
    expect(text).toContain(withoutBlanks(printable(`${words}${month}${before}${change}`)))
  for (const { words, todo, first } of todos)
    expect(text).toContain(withoutBlanks(printable([`${words}. ${todo}`, ...first].join(''))))
  expect(text).toContain(withoutBlanks(printable(standing)))
  expect(text).toContain(`Headhash${theLog().head().hash}`)
})

test('without a month it is the last whole one', async () => {
  const answer = await letter('')
  expect(answer.headers.get('content-disposition')).toContain(
    `inchwater-letter-${monthName(monthNumber(Date.now()) - 1)}.pdf`,
  )
})

test.each([
  ['?month=2026-13', '“month” must be a month'],
  ['?month=January', '“month” must be a month'],
  ['?month=2026-01&ahead=1000', '“ahead” must be'],
  ['?month=2026-01&ahead=soon', '“ahead” must be a number'],
])('%s is refused at the door', async (query, sentence) => {
  const answer = await letter(query)
  expect(answer.status).toBe(400)
  expect(JSON.stringify(await answer.json())).toContain(sentence)
})

test('it is a manager’s', async () => {
  expect((await letter('', team.cookies.technician)).status).toBe(403)
  expect((await letter('', '')).status).toBe(401)
})
