import type { MakerKey } from './makers'
import type { Place } from './positions'
import { type Family, type FamilyPosition, families } from './ranges'

export type Range = {
  key: string
  family: Family
  maker: MakerKey
  size: string
  /** Place among the family's sizes, smallest first. */
  sizeIndex: number
}

export type Position = { key: string; range: Range; place: Place; rating: FamilyPosition; running: number }

/** Every range of the demo, maker by maker: a family and a size. @example 'Larkfell 2 080' */
export const ranges: readonly Range[] = (families as readonly Family[]).flatMap((family) =>
  family.sizes.map((size, sizeIndex) => ({
    key: `${family.name} ${size}`,
    family,
    maker: family.maker,
    size,
    sizeIndex,
  })),
)

/** Every switch position of the demo. @example 'Larkfell 2 080 / Low fire' */
export const positions: readonly Position[] = ranges
  .flatMap((range) => range.family.positions.map((rating) => ({ range, rating })))
  .map(({ range, rating }, running) => ({
    key: `${range.key} / ${rating.place}`,
    range,
    place: rating.place,
    rating,
    running,
  }))

/** @throws RangeError if there is no such position */
export function positionNamed(key: string): Position {
  const found = positions.find((position) => position.key === key)
  if (found === undefined) throw new RangeError(`The demo has no position “${key}”`)
  return found
}
