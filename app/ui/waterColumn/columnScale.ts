import { scaleLinear } from 'd3-scale'
import { fromPascals } from '@/lib/core/pressure'
import type { Column } from './column'

/** Pascals to heights, and the figures along the tube. Heights grow downwards, as in SVG. */
export type ColumnScale = {
  /** Height of a magnitude in the column's own sense. */
  heightOf: (pascals: number) => number
  ticks: { key: string; height: number; words?: string }[]
  /** Height of the water in the dish: zero. */
  dishLine: number
  lowest: number
  highest: number
}

/** The least span of a scale, so that a column with little in it doesn't magnify trifles: 0.5 in. w.c. */
const leastSpanPascals = 125

/**
 * The scale of a column in the reader's unit. Suction is drawn upwards from the dish line and positive pressure
 * downwards, whichever of the two the column's marks are in.
 * @param top height of the highest figure  @param bottom height of the lowest
 */
export function columnScale(column: Column, top: number, bottom: number): ColumnScale {
  const upwards = column.sense === 'pressure' ? -1 : 1
  const inUnit = (pascals: number) => fromPascals(pascals, column.unit) * upwards
  const least = inUnit(leastSpanPascals)
  const all = [0, least, ...extremes(column).map(inUnit)]
  const scale = scaleLinear()
    .domain([Math.min(...all), Math.max(...all)])
    .nice(5)
    .range([bottom, top])
  const [lowest = bottom, highest = top] = scale.range()
  const figures = scale.ticks(5)
  const format = scale.tickFormat(5)
  const minor = scale.ticks(10).filter((value) => !figures.includes(value))
  return {
    heightOf: (pascals) => scale(inUnit(pascals)),
    ticks: [
      ...figures.map((value) => ({ key: `${value}`, height: scale(value), words: format(Math.abs(value)) })),
      ...minor.map((value) => ({ key: `${value}`, height: scale(value) })),
    ],
    dishLine: scale(0),
    lowest,
    highest,
  }
}

function extremes({ marks, reading, earlier = [] }: Column): number[] {
  return [
    ...marks.flatMap((mark) => [
      mark.pascals + (mark.toleranceAbove ?? 0),
      mark.pascals - (mark.toleranceBelow ?? 0),
    ]),
    ...(reading
      ? [reading.pascals + reading.uncertaintyPascals, reading.pascals - reading.uncertaintyPascals].map(
          (edge) =>
            // The soft edge of a reading near zero doesn't open a scale on the other side.
            edge * reading.pascals < 0 ? 0 : edge,
        )
      : []),
    ...earlier.map(({ pascals }) => pascals),
  ]
}
