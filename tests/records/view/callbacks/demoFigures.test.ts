import { expect, test } from 'vitest'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { callbackFigures } from '@/lib/records/view/callbacks/callbackFigures'
import { teamFacts } from '@/lib/records/view/callbacks/caseFacts'
import { usualQuestion } from '@/lib/records/view/callbacks/question'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { demoRecords, demoSeed } from '@/seed-demo/company'

const file = foldTeamFile(demoRecords(demoSeed))
const now = '2026-11-21T12:00:00Z'
const figures = callbackFigures(file, { ...usualQuestion(now), fromMonth: '2022-10' }, now)

test('of the demo every picture has something to show', () => {
  expect(figures.settled.of).toBeGreaterThan(200)
  expect(figures.open.of).toBeGreaterThan(5)
  expect(figures.months.filter(({ point }) => point !== undefined).length).toBeGreaterThan(24)
  for (const { curves, test } of [
    figures.curves.byCauseGroup,
    figures.curves.byRemedy,
    figures.curves.bySwitch,
  ]) {
    expect(curves.length).toBeGreaterThan(1)
    expect(curves.every(({ watchedDays }) => watchedDays.length > 0)).toBe(true)
    expect(test.ok).toBe(true)
  }
  for (const shown of [
    figures.causes,
    figures.remedies,
    figures.costs.parts,
    figures.readings.months,
    figures.people,
  ])
    expect(shown.length).toBeGreaterThan(2)
})

test('the cases that stand as repaired and proven are those that count as fixes', () => {
  const stands = counting(file.cases).flatMap(({ id }) =>
    caseViewOf(file, id)?.standing === 'repaired and proven' ? [id] : [],
  )
  const fixes = teamFacts(file).flatMap(({ cases }) =>
    cases.flatMap(({ id, ended }) => (ended?.how === 'repaired and proven' ? [id] : [])),
  )
  // A furnace that was left off later stands as left off, and was mended all the same.
  expect(fixes).toEqual(expect.arrayContaining(stands))
  expect(fixes.length - stands.length).toBeLessThanOrEqual(3)
})
