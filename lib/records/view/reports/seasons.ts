import type { timeAndWeatherFindings } from '@/lib/catalogue/findings/timeAndWeather'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { casesOfTeam } from '../callbacks/caseFacts'
import { caseFileOf } from '../case/caseFile'
import { isIn, type Period } from './period'

/** Cases opened in one month of the year, whatever the year, and their ids. */
export type MonthOfYear = { month: number; caseIds: readonly string[] }

/** Cases in which a finding about the weather was seen, and in how many anybody said anything of it. */
export type WeatherSeen = { finding: string; seenIds: readonly string[]; asked: number }

export type Seasons = {
  /** January to December; months are those of UTC. */
  months: readonly MonthOfYear[]
  weather: readonly WeatherSeen[]
  /** Cases with the weather written down on a visit, in somebody's own words, which nothing counts. */
  writtenIds: readonly string[]
  cases: number
}

/** What of the findings is about weather; the others of their group are about hours, seasons and neighbours. */
const weatherFindings = [
  'long-runs-in-bitter-cold',
  'in-high-wind',
  'in-one-wind-direction',
  'in-thaw-or-rain',
  'after-snowfall-or-drift',
  'in-mild-weather-only',
] as const satisfies readonly (keyof typeof timeAndWeatherFindings)[]

/** When in the year the cases of a period were opened, and in what weather the trouble was said to come. */
export function seasons(file: TeamFile, period: Period): Seasons {
  const cases = casesOfTeam(file).filter(
    ({ openedAt, circuit }) => isIn(period, openedAt) && circuit === 'proving circuit',
  )
  const months = Array.from({ length: 12 }, (_, month) => ({
    month: month + 1,
    caseIds: cases.filter(({ openedAt }) => new Date(openedAt).getUTCMonth() === month).map(({ id }) => id),
  }))
  const said = cases.map(({ id }) => {
    const ofCase = caseFileOf(file, id)
    const values = new Map(ofCase?.findings.map(({ body }) => [body.finding, body.value]))
    const written = ofCase?.visits.some(({ entry }) => entry.body.weather !== undefined) === true
    return { id, values, written }
  })
  return {
    months,
    weather: weatherFindings.map((finding) => ({
      finding,
      seenIds: said.filter(({ values }) => values.get(finding) === 'seen').map(({ id }) => id),
      asked: said.filter(({ values }) => values.has(finding) && values.get(finding) !== 'not checked').length,
    })),
    writtenIds: said.filter(({ written }) => written).map(({ id }) => id),
    cases: cases.length,
  }
}
