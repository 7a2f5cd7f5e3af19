import { demoDay } from '../book'
import { dayMs, happens, pick, pickWeighted, workingDayAfter } from '../drawing'
import type { Branch } from '../names'
import { branches } from '../names'
import type { Aftermath, CaseTelling } from './callTypes'
import { tellCase } from './course'
import { type Technician, technicians } from './habits'
import { type House, technicianOf } from './houses'
import { factorySwitch, needsSwitch } from './mend'
import { drawTrouble, type Trouble, troubleOf } from './trouble'
import type { Day, Weather } from './weather'

/** The first day on which somebody opened a case. */
const firstCaseDay = '2022-10-10'

/** Calls on a working day of each branch in ordinary weather of the heating season. */
const callsADay: Readonly<Record<Branch, number>> = { Quarlfoot: 0.15, Dunmarrow: 0.15, 'Upper Vennet': 0.13 }

/** How many times as many in other weather; and how many in months without heating. */
const callTimes: Readonly<Record<Weather, number>> = {
  ordinary: 1,
  'first cold': 2.6,
  'bitter cold': 2,
  snow: 1.8,
  thaw: 1.2,
  gale: 1.6,
}
const warmMonths = 0.12

/** A working day of one person has room for so many visits. */
const visitsADay = 2

/**
 * Draws every call of four winters and tells its case: who goes there, what is found, what is done, what comes back.
 * Days run forward, so that whatever is said can name what was said before it.
 */
export function drawCases(telling: CaseTelling, houses: readonly House[]): void {
  const { random } = telling
  const diary = openDiary(random)
  const busyUntil = new Map<House, string>()
  let due: { house: House; trouble: Trouble; on: string }[] = []
  const call = (house: House, trouble: Trouble, day: string, isRepeat: boolean): void => {
    const { by, on } = diary.book(house.branch, day)
    if (on >= demoDay) return
    const after: Aftermath = tellCase(telling, { house, trouble, by, on, isRepeat })
    busyUntil.set(house, after.staysOff ? '9999' : after.until)
    if (after.backAfter === undefined) return
    const back = workingDayAfter(after.until, after.backAfter, demoDay)
    if (isHeating(back))
      due.push({ house, trouble: troubleOf(random, trouble.main, trouble.contributing), on: back })
  }
  for (const on of workingDays(firstCaseDay)) {
    const isDue = due.filter((each) => each.on <= on)
    due = due.filter((each) => each.on > on)
    for (const { house, trouble } of isDue)
      if ((busyUntil.get(house) ?? '') < on) call(house, trouble, on, true)
    for (const branch of Object.keys(branches) as Branch[]) {
      const day = telling.weatherOn(branch, on)
      for (let calls = poisson(random, callRate(day, branch)); calls > 0; calls--) {
        const free = houses.filter(
          (house) => house.branch === branch && house.since < on && (busyUntil.get(house) ?? '') < on,
        )
        const house = pickWeighted(random, free, ({ prone }) => prone)
        call(house, tellableTrouble(telling, house, day), on, false)
      }
    }
  }
}

const callRate = ({ on, weather }: Day, branch: Branch): number =>
  callsADay[branch] * (isHeating(on) ? callTimes[weather] : warmMonths)

const isHeating = (on: string): boolean => {
  const month = Number(on.slice(5, 7))
  return month >= 10 || month <= 4
}

/** A trouble that needs a switch is told only once the parts lists name that switch. */
function tellableTrouble({ team, random }: CaseTelling, house: House, day: Day): Trouble {
  for (;;) {
    const trouble = drawTrouble(random, house, day)
    const stage = house.stages[0]!
    if (!needsSwitch(trouble.main) || factorySwitch({ team, house, on: day.on }, stage) !== undefined)
      return trouble
  }
}

/** Who goes there: mostly the branch's own, as long as the day has room; else the next working day. */
function openDiary(random: () => number) {
  const visits = new Map<string, number>()
  const room = (by: Technician, on: string) => (visits.get(`${by} ${on}`) ?? 0) < visitsADay
  return {
    book(branch: Branch, day: string): { by: Technician; on: string } {
      for (let on = day; ; on = workingDayAfter(on, 1, '2030-01-01')) {
        const own = technicianOf[branch].filter((by) => room(by, on))
        const others = technicians.filter((by) => !technicianOf[branch].includes(by) && room(by, on))
        const by =
          own.length > 0 && !(others.length > 0 && happens(random, 0.1))
            ? pick(random, own)
            : others.length > 0
              ? pick(random, others)
              : undefined
        if (by === undefined) continue
        visits.set(`${by} ${on}`, (visits.get(`${by} ${on}`) ?? 0) + 1)
        return { by, on }
      }
    },
  }
}

function* workingDays(from: string): Generator<string> {
  for (let on = from; on < demoDay; on = new Date(Date.parse(on) + dayMs).toISOString().slice(0, 10))
    if (new Date(on).getUTCDay() % 6 !== 0) yield on
}

/** A number of events where so many are expected (D. E. Knuth's multiplication of uniform numbers). */
function poisson(random: () => number, expected: number): number {
  let events = 0
  for (let product = random(); product > Math.exp(-expected); product *= random()) events++
  return events
}
