import { describe, expect, test } from 'vitest'
import { type CallbackFigures, figuresOf } from '@/lib/records/view/callbacks/callbackFigures'
import type { CaseFacts } from '@/lib/records/view/callbacks/caseFacts'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { manyFacts } from './manyFacts'

const facts = manyFacts(20260412, 3000, '2023-10-01T00:00:00Z', 3)
const all = facts.flatMap(({ cases }) => cases)
const now = Date.parse('2026-09-10T12:00:00Z')
const dayMs = 86_400_000
const question: CallbackQuestion = {
  fromMonth: '2024-01',
  toMonth: '2026-09',
  days: 30,
  sameCircuit: true,
  timeScale: 'calendar days',
}
const completing = ['repaired and proven', 'repaired, not proven', 'no fault found']

/** Every pair looked at: the plain definition, as slow as it is. */
function recounted({ days, sameCircuit, branch, rangeId, fromMonth, toMonth }: CallbackQuestion) {
  const counts = all.filter(
    (one) =>
      (!sameCircuit || one.circuit === 'proving circuit') &&
      (branch === undefined || one.branch === branch) &&
      (rangeId === undefined || one.rangeId === rangeId) &&
      one.openedAt <= now,
  )
  const nextOf = (job: CaseFacts) =>
    counts
      .filter((one) => one.furnaceId === job.furnaceId && one.id !== job.id && one.openedAt >= job.ended!.at)
      .sort((a, b) => a.openedAt - b.openedAt || (a.id < b.id ? -1 : 1))[0]
  const rows = counts.flatMap((job) => {
    if (job.ended === undefined || job.ended.at > now || !completing.includes(job.ended.how)) return []
    const month = new Date(job.ended.at).toISOString().slice(0, 7)
    if (month < fromMonth || month > toMonth) return []
    const [year, number] = month.split('-').map(Number)
    const next = nextOf(job)
    const back = next !== undefined && next.openedAt <= job.ended.at + days * dayMs
    return [{ job, month, back, settled: Date.UTC(year!, number!) + days * dayMs <= now }]
  })
  return rows
}

const sorted = (ids: readonly string[]) => [...ids].sort()

const questions: [string, Partial<CallbackQuestion>][] = [
  ['as usual', {}],
  ['sixty days, any circuit', { days: 60, sameCircuit: false }],
  ['one branch', { branch: 'branch 2' }],
  ['one model range, one year', { rangeId: 'range 4', fromMonth: '2025-01', toMonth: '2025-12' }],
]

describe.each(questions)('figuresOf on 3,000 invented cases, %s', (_, part) => {
  const asked = { ...question, ...part }
  const figures: CallbackFigures = figuresOf(facts, asked, now)
  const rows = recounted(asked)

  test('settled and open jobs, and which came back, are those that looking at every pair finds', () => {
    for (const standing of ['settled', 'open'] as const) {
      const wanted = rows.filter(({ settled }) => settled === (standing === 'settled'))
      expect(sorted(figures[standing].countedIds)).toEqual(
        sorted(wanted.filter(({ back }) => back).map(({ job }) => job.id)),
      )
      expect(figures[standing].of).toBe(wanted.length)
    }
    expect(figures.settled.count).toBeGreaterThan(0)
  })

  test('months, causes, remedies and people each add up to the same jobs and the same callbacks', () => {
    const { months, causes, remedies, people, settled } = figures
    const parts = [months.filter(({ standing }) => standing === 'settled'), causes, remedies, people].map(
      (groups: readonly { cameBack: { countedIds: readonly string[]; of: number } }[]) => groups,
    )
    for (const groups of parts) {
      expect(sorted(groups.flatMap(({ cameBack }) => cameBack.countedIds))).toEqual(
        sorted(settled.countedIds),
      )
      expect(groups.reduce((sum, { cameBack }) => sum + cameBack.of, 0)).toBe(settled.of)
    }
  })

  test('every figure names as many cases as it counts, each once', () => {
    const shares = [
      figures.settled,
      figures.open,
      ...figures.months.flatMap((month) => [month.cameBack, month.fixesThatCameBack]),
      ...[...figures.causes, ...figures.remedies, ...figures.people].map(({ cameBack }) => cameBack),
      ...figures.readings.months.flatMap(({ both, before, after }) => [both, before, after]),
      ...figures.costs.parts.map(({ callbacks }) => callbacks),
    ]
    for (const { count, of, countedIds, otherIds } of shares) {
      expect(countedIds).toHaveLength(count)
      expect(new Set([...countedIds, ...otherIds]).size).toBe(of)
    }
  })

  test('the three sets of curves watch the same fixes, one a furnace, and see the same callbacks', () => {
    const furnaceOf = new Map(all.map(({ id, furnaceId }) => [id, furnaceId]))
    const seen = Object.values(figures.curves).map(({ curves }) =>
      sorted(
        curves.flatMap(({ cameBackIds, censored }) => [...cameBackIds, ...Object.values(censored).flat()]),
      ),
    )
    expect(seen[1]).toEqual(seen[0])
    expect(seen[2]).toEqual(seen[0])
    expect(new Set(seen[0]!.map((id) => furnaceOf.get(id))).size).toBe(seen[0]!.length)
    for (const { curves } of Object.values(figures.curves))
      for (const { steps, cameBackIds } of curves)
        expect(sorted(steps.flatMap(({ fixIds }) => fixIds))).toEqual(sorted(cameBackIds))
  })

  test('minutes by cause add up to all minutes', () => {
    const { all: whole, byCause } = figures.costs
    expect(byCause.reduce((sum, { minutes }) => sum + minutes, 0)).toBe(whole.minutes)
  })
})

test('the order in which the records came makes no difference to a figure', () => {
  const counts = ({ months, settled, curves }: CallbackFigures) => ({
    settled: sorted(settled.countedIds),
    months: months.map(({ point, cameBack }) => [point, cameBack.count, cameBack.of]),
    test: curves.byCause.test,
  })
  expect(counts(figuresOf(facts.toReversed(), question, now))).toEqual(
    counts(figuresOf(facts, question, now)),
  )
})
