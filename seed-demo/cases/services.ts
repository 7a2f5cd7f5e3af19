import { demoDay } from '../book'
import { dayMs, drawn, happens, pick } from '../drawing'
import type { CaseTelling } from './callTypes'
import { type House, technicianOf } from './houses'
import { asFoundCold, asFoundHot } from './pressure'
import { readingBody } from './visit'

/** Years in which furnaces were serviced before the heating season. */
const years = [2022, 2023, 2024, 2025, 2026] as const

/** How many of the furnaces get a yearly service with readings. */
const serviced = 0.3

/** Yearly services: what a healthy furnace shows, read and kept as its baseline. */
export function tellServices(telling: CaseTelling, houses: readonly House[]): void {
  const { random } = telling
  for (const year of years)
    for (const house of houses) {
      const on = serviceDay(random, year)
      if (happens(random, serviced) && house.since < on && on < demoDay) tellService(telling, house, on)
    }
}

function serviceDay(random: () => number, year: number): string {
  const first = Date.parse(`${year}-08-15`)
  for (;;) {
    const day = new Date(first + Math.floor(drawn(random, [0, 62])) * dayMs)
    if (day.getUTCDay() % 6 !== 0) return day.toISOString().slice(0, 10)
  }
}

function tellService(telling: CaseTelling, house: House, on: string): void {
  const { team, random } = telling
  const by = pick(random, technicianOf[house.branch])
  const alsoCold = happens(random, 0.6)
  const healthy = { faults: [], when: 'as found' as const }
  for (const stage of house.stages)
    for (const read of [
      ...(alsoCold ? [{ ...asFoundCold, ...healthy, stage, phase: 'pre-purge' as const }] : []),
      { ...asFoundHot, ...healthy, stage, phase: 'steady hot' as const },
    ]) {
      const body = readingBody({ ...telling, house, by, on }, read)
      const readingId = team.say({ kind: 'reading', by, on, pause: [4, 12], body })
      const baseline = { furnaceId: house.furnaceId, readingId, occasion: 'annual service', on }
      team.say({ kind: 'baseline', by, on, pause: [0.3, 1], body: baseline })
    }
}
