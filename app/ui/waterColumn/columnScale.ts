import { scaleLinear } from 'd3-scale'
import { fromPascals } from '@/lib/core/pressure'
import type { Column } from './column'
import { dishDepth } from './measures'

/** Heights of the glass. Heights grow downwards, as in SVG. */
export type Frame = {
  /** The water in the dish: zero. */
  dishLine: number
  tubeTop: number
  tubeFoot: number
  /** The lowest part of the drawing. */
  foot: number
  /** Whether the scale goes below the dish, so that a well is needed. */
  deep: boolean
}

/** Pascals to heights, and the figures along the tube. */
export type ColumnScale = {
  /** Height of a magnitude in the column's own sense. */
  heightOf: (pascals: number) => number
  ticks: { key: string; height: number; words?: string }[]
  frame: Frame
}

/** The least span of a scale, so that a column with little in it doesn't magnify trifles: half an inch of water. */
const leastSpanPascals = 125
/** Where the highest figure stands, and how far the open end of the tube rises above it and above the dish. */
const top = 40
const openEnd = 8
const leastTube = 36

/**
 * The scale of a column in the reader's unit. Suction is drawn upwards from the dish line and positive pressure
 * downwards, whichever of the two the column's marks are in.
 * @param span height from the highest figure to the lowest, in units of the drawing
 */
export function columnScale(column: Column, span: number): ColumnScale {
  const upwards = column.sense === 'pressure' ? -1 : 1
  const inUnit = (pascals: number) => fromPascals(pascals, column.unit) * upwards
  const all = [0, leastSpanPascals, ...extremes(column)].map(inUnit)
  const scale = scaleLinear()
    .domain([Math.min(...all), Math.max(...all)])
    .nice(5)
    .range([top + span, top])
  const figures = scale.ticks(5)
  const format = scale.tickFormat(5)
  const between = scale.ticks(10).filter((value) => !figures.includes(value))
  const dishLine = scale(0)
  const deep = top + span > dishLine + 1
  const foot = Math.max(top + span + (deep ? 14 : 0), dishLine + dishDepth)
  return {
    heightOf: (pascals) => scale(inUnit(pascals)),
    ticks: [
      ...figures.map((value) => ({ key: `${value}`, height: scale(value), words: format(Math.abs(value)) })),
      ...between.map((value) => ({ key: `${value}`, height: scale(value) })),
    ],
    frame: {
      dishLine,
      deep,
      foot,
      tubeFoot: foot - 7,
      tubeTop: Math.min(top - openEnd, dishLine - leastTube),
    },
  }
}

function extremes({ marks, reading, earlier = [] }: Column): number[] {
  const ends = marks.flatMap(({ pascals, toleranceAbove = 0, toleranceBelow = 0 }) => [
    pascals + toleranceAbove,
    pascals - toleranceBelow,
  ])
  for (const { pascals } of earlier) ends.push(pascals)
  if (reading) {
    const { pascals, uncertaintyPascals } = reading
    // The soft edge of a reading near zero doesn't open the scale on the other side.
    const edges = [pascals + uncertaintyPascals, pascals - uncertaintyPascals]
    ends.push(...edges.map((edge) => (edge * pascals > 0 ? edge : 0)))
  }
  return ends
}
