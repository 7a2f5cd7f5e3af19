import type { Book, Said } from './book'
import { positions, ranges } from './catalogue'
import { type Site, sites } from './furnaces'
import { gauges } from './gauges'
import { type MakerKey, makers } from './makers'
import type { PersonKey } from './people'
import { places, sisterOf } from './positions'

/** Ids of what the team has on file, by the names that the demo uses for it. */
export type Catalogue = {
  makers: ReadonlyMap<MakerKey, string>
  ranges: ReadonlyMap<string, string>
  positions: ReadonlyMap<string, string>
  gauges: ReadonlyMap<string, string>
  furnaces: ReadonlyMap<string, string>
}

/** The catalogue was typed in from the old binder within the first days. */
const bindersDays = [
  '2022-09-12',
  '2022-09-13',
  '2022-09-14',
  '2022-09-15',
  '2022-09-16',
  '2022-09-19',
] as const
const binderHands: readonly PersonKey[] = ['ragna', 'piet', 'dunja']

/** Puts makers, ranges, positions, gauges and furnaces on file, and nothing about any rating. */
export function typeInCatalogue(book: Book): Catalogue {
  const rangeIds = new Map<string, string>()
  const positionIds = new Map<string, string>()
  const makerIds = new Map<MakerKey, string>()

  Object.entries(makers).forEach(([key, { name, note }]) => {
    const body = { name, note }
    makerIds.set(key as MakerKey, book.say({ kind: 'maker', by: 'ragna', on: bindersDays[0], body }))
  })
  ranges.forEach(({ key, maker, family, size }, index) => {
    const by = binderHands[index % binderHands.length]!
    const on = bindersDays[Math.floor((index * bindersDays.length) / ranges.length)]!
    const range = {
      makerId: held(makerIds, maker),
      name: key,
      modelPatterns: family.patterns(size),
      fuel: family.fuel,
      heat: family.heat,
      note: family.note,
    }
    const rangeId = book.say({ kind: 'equipment range', by, on, body: range })
    rangeIds.set(key, rangeId)
    for (const position of positions.filter((each) => each.range.key === key)) {
      const sister = sisterOf[position.place]
      const body = {
        rangeId,
        name: position.place,
        ...places[position.place],
        sisterId: sister && positionIds.get(`${key} / ${sister}`),
      }
      positionIds.set(position.key, book.say({ kind: 'position', by, on, body }))
    }
  })
  const gaugeIds = new Map(
    gauges.map((body) => [body.name, book.say({ kind: 'gauge', by: 'ragna', on: bindersDays[5], body })]),
  )
  const furnaceIds = new Map<string, string>()
  for (const site of sites) furnaceIds.set(site.siteLabel, book.say(furnaceSaid(site, rangeIds, furnaceIds)))
  return {
    makers: makerIds,
    ranges: rangeIds,
    positions: positionIds,
    gauges: gaugeIds,
    furnaces: furnaceIds,
  }
}

/** @throws RangeError if the demo has no such name */
export function held<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value {
  const value = map.get(key)
  if (value === undefined) throw new RangeError(`The demo has nothing called “${key}”`)
  return value
}

function furnaceSaid(
  { range, by, on, replaces, model, ...site }: Site,
  rangeIds: ReadonlyMap<string, string>,
  furnaceIds: ReadonlyMap<string, string>,
): Said {
  const known = ranges.find(({ key }) => key === range)
  if (known === undefined) throw new RangeError(`The demo has no range “${range}”`)
  const { family, size } = known
  const body = {
    ...site,
    rangeId: held(rangeIds, range),
    model: model ?? family.printed(size),
    fuel: family.fuel === 'either' ? ('natural gas' as const) : family.fuel,
    replaces: replaces && held(furnaceIds, replaces),
  }
  return { kind: 'furnace', by, on, body }
}
