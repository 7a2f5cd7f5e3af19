import { scaleLinear } from 'd3-scale'
import { curveStepAfter, line } from 'd3-shape'
import { classNames } from '../classNames'
import styles from './charts.module.css'
import type { MarkLink } from './mark'

/** What a curve shows at one of the days that are marked. */
export type SurvivalMark = {
  day: number
  survival: number
  interval?: readonly [number, number]
  atRisk: number
  says: string
}

export type SurvivalCurve = {
  key: string
  /** Where it falls, in order of time; it begins at day 0 with 1. */
  steps: readonly { time: number; survival: number }[]
  /** Up to this day it is made from enough; after it, it is drawn faint. */
  enoughUntil: number
  lastDay: number
  marks: readonly SurvivalMark[]
}

const [left, right, top, foot] = [46, 14, 12, 232]
const rowHeight = 20
/** Between the marks of two curves at the same day. */
const beside = 24

type Props = {
  curves: readonly SurvivalCurve[]
  days: readonly number[]
  width: number
  label: string
  daysWords: string
  linkOf: (curve: string, day: number) => MarkLink
}

/**
 * The share without an event over time, one curve a group, numbered as in the key beside it. At some days each curve
 * has a mark with its interval; below them stands how many were still watched.
 */
export function SurvivalChart({ curves, days, width, label, daysWords, linkOf }: Props) {
  const last = Math.max(1, ...curves.map(({ lastDay }) => lastDay))
  // The first mark may reach left as far as it stands from day 0.
  const closest = Math.min(
    ...days.map((day, place) => (place === 0 ? 2 * day : day - days[place - 1]!)),
    last,
  )
  const room = ((curves.length + 0.5) * beside * last) / closest
  const wide = Math.max(width, left + right + Math.min(room, 900))
  const across = scaleLinear([0, last], [left, wide - right])
  const up = scaleLinear([0, 1], [foot, top])
  const height = foot + 44 + (curves.length + 1) * rowHeight
  const dodge = (place: number) =>
    (place - (curves.length - 1) / 2) * Math.min(beside, (closest / last) * (wide / curves.length))
  const stairs = line<{ time: number; survival: number }>(
    ({ time }) => across(time),
    ({ survival }) => up(survival),
  ).curve(curveStepAfter)
  return (
    <svg className={styles.picture} viewBox={`0 0 ${wide} ${height}`} width={wide} aria-label={label}>
      <g className={styles.axis} aria-hidden>
        {[0, 0.25, 0.5, 0.75, 1].map((share) => (
          <g key={share}>
            <path className={styles.grid} d={`M${left} ${up(share)}H${wide - right}`} />
            <text x={left - 6} y={up(share) + 4} textAnchor="end">
              {100 * share} %
            </text>
          </g>
        ))}
        {[0, ...days].map((day) => (
          <text key={day} x={across(day)} y={foot + 18} textAnchor="middle">
            {day}
          </text>
        ))}
        <text className={styles.note} x={wide - right} y={foot + 36} textAnchor="end">
          {daysWords}
        </text>
        <text className={styles.note} x={4} y={foot + 36 + rowHeight}>
          Still watched
        </text>
        {curves.map(({ key, marks }, place) => (
          <g key={key}>
            <text className={styles.note} x={4} y={foot + 36 + (place + 2) * rowHeight}>
              {place + 1}
            </text>
            {marks.map(({ day, atRisk }) => (
              <text key={day} x={across(day)} y={foot + 36 + (place + 2) * rowHeight} textAnchor="middle">
                {atRisk}
              </text>
            ))}
          </g>
        ))}
      </g>
      {curves.map(({ key, steps, enoughUntil, lastDay }, place) => {
        const sure = steps.filter(({ time }) => time <= enoughUntil)
        const level = sure.at(-1)?.survival ?? 1
        const end = Math.min(enoughUntil, lastDay)
        const after = steps.filter(({ time }) => time > enoughUntil)
        return (
          <g key={key} className={styles[`line${place}`]} aria-hidden>
            <path
              d={stairs([{ time: 0, survival: 1 }, ...sure, { time: end, survival: level }]) ?? undefined}
            />
            {lastDay > end && (
              <path
                className={styles.faint}
                d={
                  stairs([
                    { time: end, survival: level },
                    ...after,
                    { time: lastDay, survival: after.at(-1)?.survival ?? level },
                  ]) ?? undefined
                }
              />
            )}
          </g>
        )
      })}
      {curves.map(({ key, marks, enoughUntil }, place) =>
        marks.map(({ day, survival, interval, says }) => {
          const x = across(day) + dodge(place)
          const { href, isOpen, onClick } = linkOf(key, day)
          return (
            <a
              key={`${key} ${day}`}
              className={styles.mark}
              href={href}
              aria-label={`${place + 1}. ${says}`}
              aria-expanded={isOpen}
              onClick={onClick}
            >
              <rect className={styles.hit} x={x - beside / 2} y={top} width={beside} height={foot - top} />
              {interval && (
                <path className={styles.whisker} d={`M${x} ${up(interval[0])}V${up(interval[1])}`} />
              )}
              <circle
                className={classNames(styles.numbered, day > enoughUntil && styles.hollow)}
                cx={x}
                cy={up(survival)}
                r={8}
              />
              <text className={styles.number} x={x} y={up(survival) + 4} textAnchor="middle">
                {place + 1}
              </text>
            </a>
          )
        }),
      )}
    </svg>
  )
}

/** A short piece of a curve's line, for the key beside the picture. */
export function LineSample({ place }: { place: number }) {
  return (
    <svg className={styles.sample} viewBox="0 0 44 20" width={44} height={20} aria-hidden>
      <g className={styles[`line${place}`]}>
        <path d="M0 10H44" />
      </g>
    </svg>
  )
}
