import type { ReactNode } from 'react'
import { formatPressure, type PressureUnit, pressureNumeral, unitLabel } from '@/lib/core/pressure'
import type { Action, LimitKind } from '@/lib/core/vocabulary'
import { classNames } from '../classNames'
import { Beside } from '../paper/Beside'
import { actionWords } from './actionWords'
import { type DatedLevel, LevelWord } from './LevelWord'
import { otherUnit, toleranceWords } from './pressureWords'
import { Quiet } from './Quiet'
import { type SourceLine, SourceList } from './SourceList'
import { sayDate } from './sayDate'
import styles from './setpoint.module.css'

/** What a number must never be seen without. */
export type ShownStanding = DatedLevel & { sources: readonly SourceLine[] }

type Props = {
  /** Magnitude. */
  pascals: number
  unit: PressureUnit
  action: Action
  limit: LimitKind
  toleranceAbove?: number
  toleranceBelow?: number
  /** Decimals that the source stated in `unit`; the unit's own when left out. */
  decimals?: number
  standing: ShownStanding
  /** Large: readable at arm's length. Small: beside a larger one. Line: within a list; the sources stand in one line. */
  size?: 'large' | 'small' | 'line'
  /** A WaterColumn to stand at its left. */
  picture?: ReactNode
}

/**
 * A setpoint's number with its unit, the other unit small beside it, its tolerance, its level with a date, and its
 * sources with theirs. A number without a source is not shown; that it is missing is said instead.
 */
export function SetpointNumber(props: Props) {
  const { pascals, unit, action, decimals, standing, size = 'large', picture } = props
  const words = actionWords[action]
  if (standing.sources.length === 0) {
    return (
      <p className={styles.missing}>{words.name}: not shown, because no source is on file for this number.</p>
    )
  }
  const tolerance = toleranceWords(props, unit, decimals)
  const figure = pressureNumeral(pascals, unit, decimals)
  const figures = (
    <div className={classNames(styles.setpoint, styles[size])}>
      <p className={styles.name}>{words.name}</p>
      <p className={styles.figure}>
        <span className={classNames(styles.numeral, figure.length > 4 && styles.long)}>{figure}</span>{' '}
        <span className={styles.unit}>{unitLabel[unit]}</span>
      </p>
      <p className={styles.beside}>
        {tolerance && <span>{tolerance}</span>}
        <span>{formatPressure(pascals, otherUnit(unit))}</span>
      </p>
      <p>
        <LevelWord level={standing.level} asOf={standing.asOf} />
      </p>
    </div>
  )
  const sources =
    size === 'line' ? (
      <Quiet>{standing.sources.map(({ words, date }) => `${words}, ${sayDate(date)}`).join('; ')}</Quiet>
    ) : (
      <SourceList sources={standing.sources} label={`Sources of: ${words.name}`} />
    )
  if (picture) {
    return (
      <Beside picture={picture} below={sources}>
        {figures}
      </Beside>
    )
  }
  return (
    <div>
      {figures}
      {sources}
    </div>
  )
}
