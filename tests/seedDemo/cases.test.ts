import { describe, expect, test } from 'vitest'
import { causeById } from '@/lib/catalogue/causes'
import { type FindingId, findingById, findings } from '@/lib/catalogue/findings'
import { unlistedCause } from '@/lib/core/diagnosis'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { endingWays } from '@/lib/records/kinds/ending'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { everythingUntil } from '@/lib/records/view/reports/period'
import { warrantyReport } from '@/lib/records/view/reports/warrantyReport'
import { trueCauses } from '@/seed-demo/cases/truth'
import { sharesOf } from '@/seed-demo/cases/truth/trails'
import { usuallyShown } from '@/seed-demo/cases/truth/usual'
import { demoSeed } from '@/seed-demo/company'
import { companyOf } from './companies'

// What is checked here are the demo's own promises; it states nothing that a publication could be held against.

const { records, cases: showings } = companyOf(demoSeed)
const file = foldTeamFile(records)
const cases = counting(file.cases)
const views = cases.map(({ id }) => caseViewOf(file, id)!)

/** The year in which a winter began, a winter's year beginning in July. */
const winterOf = (at: string) => Number(at.slice(0, 4)) - (at.slice(5, 7) < '07' ? 1 : 0)

describe('the demo’s cases', () => {
  test.each([demoSeed, 1, 2])('at least 400 over four winters, none of them thin, with seed %i', (seed) => {
    const opened = companyOf(seed).records.filter(({ kind }) => kind === 'case')
    expect(opened.length).toBeGreaterThanOrEqual(400)
    for (const winter of [2022, 2023, 2024, 2025])
      expect(opened.filter(({ saidAt }) => winterOf(saidAt) === winter).length).toBeGreaterThan(60)
  })

  test.each(showings)('by hand: $shows', ({ caseId, standing, observed = {} }) => {
    const view = caseViewOf(file, caseId)!
    expect(view.standing, view.missing.join(' ')).toBe(standing)
    expect(view.observed).toMatchObject(observed)
  })

  test('at least a dozen by hand, each on a furnace that no drawn case is on', () => {
    expect(showings.length).toBeGreaterThanOrEqual(12)
    const furnaceOf = (id: string) => file.cases.get(id)!.body.furnaceId
    const told = new Set(showings.map(({ caseId }) => furnaceOf(caseId)))
    const ids = new Set(showings.map(({ caseId }) => caseId))
    const drawn = cases.filter(({ id }) => !ids.has(id))
    expect(drawn.length).toBeGreaterThanOrEqual(400)
    expect(drawn.filter(({ body }) => told.has(body.furnaceId))).toEqual([])
  })

  test('every way of ending occurs, finished and unfinished, and two endings that disagree', () => {
    const ways = new Set(counting(file.endings).map(({ body }) => body.how))
    expect(ways).toEqual(new Set(endingWays))
    const standings = new Set(views.map(({ standing }) => standing))
    for (const standing of ['not finished', 'endings disagree', 'being worked on', 'left off'] as const)
      expect(standings).toContain(standing)
  })

  test('some come back within 30 days on the same furnace', () => {
    const repeats = views.filter(({ file: { entry, earlier } }) => {
      const before = earlier[0]
      return before !== undefined && Date.parse(entry.at) - Date.parse(before.at) < 30 * 24 * 60 * 60 * 1000
    })
    expect(repeats.length).toBeGreaterThan(20)
  })

  test('switches were swapped that no reading spoke against, and the trouble came back', () => {
    const swapped = views.filter(
      ({ file: { repairs, readings }, observed }) =>
        repairs.some(({ body }) => body.switchReplaced === true) &&
        (readings.length === 0 || observed['open-beyond-make'] !== 'seen'),
    )
    const backAgain = swapped.filter(({ file: of }) =>
      views.some(({ file: later }) => later.earlier[0]?.id === of.entry.id),
    )
    expect(swapped.length).toBeGreaterThan(10)
    expect(backAgain.length).toBeGreaterThan(3)
  })

  test('parts went back: some credited, some denied or waiting, one denied although nothing was missing', () => {
    const { counts, open, deniedWithNothingMissing } = warrantyReport(
      file,
      everythingUntil('2026-11-21T00:00:00Z'),
    )
    expect(Object.fromEntries(counts.map(({ outcome, count }) => [outcome, count]))).toEqual({
      credited: 2,
      denied: 2,
      waiting: 1,
    })
    expect(open.filter(({ evidence }) => evidence.checkedOffTheFurnace).length).toBeGreaterThan(0)
    expect(deniedWithNothingMissing).toBe(1)
  })

  test('notices were lifted, and some stand; what should not be fitted was put right', () => {
    const notices = counting(file.shutDownNotices)
    expect(counting(file.liftings).length).toBeGreaterThan(1)
    expect(notices.length).toBeGreaterThan(counting(file.liftings).length)
    expect(counting(file.foundFitted).length).toBeGreaterThan(5)
  })

  test('baselines from services and from proven repairs', () => {
    const occasions = counting(file.baselines).map(({ body }) => body.occasion)
    expect(new Set(occasions)).toEqual(new Set(['annual service', 'after a proven repair']))
    expect(occasions.length).toBeGreaterThan(100)
  })

  test('a reading writes down only limits whose reports had been said by then', () => {
    const against = counting(file.readings).flatMap(({ at, body }) =>
      (body.against ?? []).flatMap(({ reportIds }) =>
        reportIds.map((id) => ({ at, report: file.reports.get(id)! })),
      ),
    )
    expect(against.length).toBeGreaterThan(1000)
    for (const { at, report } of against) expect(report.at < at).toBe(true)
  })

  test('what is said of a visit is said on its day, or in the night after it', () => {
    for (const { file: of } of views)
      for (const { entry, endings } of of.visits)
        for (const { at } of [entry, ...endings]) {
          const hours = (Date.parse(at) - Date.parse(`${entry.body.on}T00:00:00Z`)) / 3_600_000
          expect(hours, `${entry.body.on} ${at}`).toBeGreaterThan(13)
          expect(hours, `${entry.body.on} ${at}`).toBeLessThan(36)
        }
  })

  test('no technician looks at everything, and each skips something that another looks at', () => {
    const tapped = counting(file.findings)
    const people = [...new Set(tapped.map(({ by }) => by))]
    const share = (person: string, finding: string) => {
      const own = tapped.filter(({ by }) => by === person)
      const visits = new Set(own.map(({ body }) => body.visitId)).size
      return own.filter(({ body }) => body.finding === finding).length / visits
    }
    for (const finding of ['trap', 'inducer-speed-and-amps']) {
      const shares = people.map((person) => share(person, finding)).sort((one, other) => one - other)
      expect(shares.at(-1)!).toBeGreaterThan(3 * shares[0]!)
    }
  })
})

describe('the truth behind them', () => {
  test('it names every cause of the catalogue and no other, and only findings that a person is asked for', () => {
    for (const [cause, { shows }] of Object.entries(trueCauses)) {
      expect(cause === unlistedCause || causeById(cause) !== undefined, cause).toBe(true)
      for (const id of Object.keys(shows))
        expect(findingById(id)?.asked, `${cause}: ${id}`).toBe('by a person')
    }
  })

  test('shares of the values of one finding leave room for the good one', () => {
    for (const shows of [usuallyShown, ...Object.values(trueCauses).map((truth) => truth.shows)])
      for (const { id } of findings) {
        const sum = Object.values(sharesOf(shows, id as FindingId)).reduce((total, share) => total + share, 0)
        expect(sum, id).toBeLessThanOrEqual(1)
      }
  })

  test('it differs from the catalogue: in what is usual, in what a cause shows, and in how often it is met', () => {
    const apart = (one: number, other: number) => Math.abs(one - other) > 0.1
    const pairs = Object.entries(trueCauses).flatMap(([cause, { shows }]) =>
      Object.keys(shows).flatMap((id) => {
        const trade = causeById(cause)?.likelihoods?.[id] ?? findingById(id)!.usual
        return Object.entries(sharesOf(shows, id as FindingId)).map(([value, share]) =>
          apart(share, trade[value] ?? 0),
        )
      }),
    )
    expect(pairs.filter((differs) => differs).length / pairs.length).toBeGreaterThan(0.4)
    const usual = findings.flatMap(({ id, usual: trade }) =>
      Object.entries(sharesOf(usuallyShown, id as FindingId)).map(
        ([value, share]) => Math.abs(share - trade[value]!) > 0.05,
      ),
    )
    expect(usual.filter((differs) => differs).length / usual.length).toBeGreaterThan(0.4)
    const inUpperVennet = trueCauses['ice-in-vent']!.share[2] / 100
    expect(inUpperVennet).toBeGreaterThan(3 * causeById('ice-in-vent')!.prior)
    expect(inUpperVennet).toBeGreaterThan((3 * trueCauses['ice-in-vent']!.share[0]) / 100)
  })
})
