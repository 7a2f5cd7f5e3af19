import { seededRandom } from '@/lib/core/seeded'
import { demoDay, firstDay } from '../book'
import { dayMs, normal } from '../drawing'
import { type Branch, branches } from '../names'

export type Weather = 'ordinary' | 'first cold' | 'bitter cold' | 'snow' | 'thaw' | 'gale'

export type Day = { on: string; weather: Weather; degrees: number; words: string }

/** Air gets colder by so many degrees for each metre up (the standard atmosphere's 6.5 a kilometre, ISO 2533). */
const lapse = 0.0065
const meanAtQuarlfoot = 6.5
const halfYearSwing = 12.5

/** How many days of the first frost in autumn count as the first cold snap. */
const firstColdDays = 9

/**
 * The weather in each branch, day by day: a yearly wave, colder with the height, with spells that last some days.
 * Invented, and the same for one seed.
 */
export function weatherBook(seed: number): Readonly<Record<Branch, readonly Day[]>> {
  const random = seededRandom(seed)
  const days = Math.round((Date.parse(demoDay) - Date.parse(firstDay)) / dayMs) + 1
  let spell = 0
  const sky = Array.from({ length: days }, (_, day) => {
    spell = 0.82 * spell + 2.6 * normal(random)
    const date = new Date(Date.parse(firstDay) + day * dayMs)
    const dayOfYear = (Date.UTC(2001, date.getUTCMonth(), date.getUTCDate()) - Date.UTC(2001, 0, 1)) / dayMs
    const wave = -halfYearSwing * Math.cos((2 * Math.PI * (dayOfYear - 17)) / 365)
    return {
      on: date.toISOString().slice(0, 10),
      valley: meanAtQuarlfoot + wave + spell,
      wet: random(),
      wind: random(),
    }
  })
  const daysIn = (branch: Branch): Day[] => {
    const below = lapse * (branches[branch].elevationMetres - branches.Quarlfoot.elevationMetres)
    const snowy = branch === 'Upper Vennet' ? 0.26 : branch === 'Dunmarrow' ? 0.16 : 0.09
    let frosts = 0
    return sky.map(({ on, valley, wet, wind }, day) => {
      const degrees = Math.round(valley - below)
      const month = Number(on.slice(5, 7))
      if (on.endsWith('-08-01')) frosts = 0
      const isAutumn = month >= 9
      if (isAutumn && degrees < 2) frosts++
      const before = sky[Math.max(0, day - 3)]!.valley - below
      const weather = weatherAt({
        degrees,
        before,
        wet,
        wind,
        snowy,
        gales: branch === 'Upper Vennet' ? 0.08 : 0.03,
      })
      const isFirst = isAutumn && degrees < 2 && frosts <= firstColdDays && weather !== 'snow'
      const named = isFirst ? ('first cold' as const) : weather
      return { on, weather: named, degrees, words: `${words[named]}, ${sayDegrees(degrees)}` }
    })
  }
  return {
    Quarlfoot: daysIn('Quarlfoot'),
    Dunmarrow: daysIn('Dunmarrow'),
    'Upper Vennet': daysIn('Upper Vennet'),
  }
}

function weatherAt(air: {
  degrees: number
  before: number
  wet: number
  wind: number
  snowy: number
  gales: number
}): Weather {
  if (air.degrees < -13) return 'bitter cold'
  if (air.degrees < 1 && air.wet < air.snowy) return 'snow'
  if (air.wind < air.gales) return 'gale'
  return air.degrees > 1 && air.before < -3 ? 'thaw' : 'ordinary'
}

const words: Readonly<Record<Weather, string>> = {
  ordinary: 'dry',
  'first cold': 'first real frost',
  'bitter cold': 'clear and bitter',
  snow: 'snow, still falling',
  thaw: 'thaw, everything drips',
  gale: 'gale from the west',
}

const sayDegrees = (degrees: number): string => (degrees < 0 ? `−${-degrees} °C` : `${degrees} °C`)
