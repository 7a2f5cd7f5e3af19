import type { PressureUnit } from '@/lib/core/pressure'
import { formatPressure } from '@/lib/core/pressure'
import type { RatingStanding, Rival } from '@/lib/core/rating'
import type { Action } from '@/lib/core/vocabulary'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { actionWords } from '../ui/words/actionWords'
import { LevelWord } from '../ui/words/LevelWord'
import { Quiet } from '../ui/words/Quiet'
import { SetpointNumber } from '../ui/words/SetpointNumber'
import { SourceList } from '../ui/words/SourceList'
import styles from './setpointCard.module.css'
import { behind, linesFor, newestDate, sourceLine, statedDecimals } from './sourceLines'

type Props = {
  action: Action
  standing: RatingStanding
  setpoint: Setpoint
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  size: 'large' | 'small'
}

/** One action's number with its level, its sources, what speaks against it, its leads, and why it stands so. */
export function StandingSection({ action, standing, setpoint, unit, names, size }: Props) {
  const { reports } = setpoint
  if (standing.level === 'Not on file') {
    return (
      <section className={styles.standing}>
        <p>
          {actionWords[action].name}: <LevelWord level="Not on file" />
        </p>
        <Reasons standing={standing} />
      </section>
    )
  }
  const ids = behind(standing)
  const disputing = standing.rivals.filter((rival) => rival.disputes)
  const slips = standing.rivals.filter((rival) => !rival.disputes)
  return (
    <section className={styles.standing}>
      <SetpointNumber
        {...standing}
        action={action}
        unit={unit}
        decimals={statedDecimals(ids, reports, unit)}
        size={disputing.length > 0 ? 'small' : size}
        standing={{
          level: standing.level,
          asOf: newestDate(ids, reports),
          sources: linesFor(ids, reports, names),
        }}
      />
      {disputing.length > 0 && (
        <div className={styles.against}>
          <h4>What stands against it</h4>
          {disputing.map((rival) => (
            <RivalNumber key={rival.reportIds.join()} {...{ rival, action, setpoint, unit, names }} />
          ))}
        </div>
      )}
      {slips.map((rival) => (
        <RivalLine key={rival.reportIds.join()} {...{ rival, setpoint, unit, names }} />
      ))}
      <Reasons standing={standing} />
      <Leads {...{ standing, setpoint, unit, names, shown: ids }} />
    </section>
  )
}

type RivalProps = Pick<Props, 'setpoint' | 'unit' | 'names'> & { rival: Rival }

function RivalNumber({ rival, action, setpoint, unit, names }: RivalProps & { action: Action }) {
  return (
    <>
      <SetpointNumber
        {...rival}
        action={action}
        unit={unit}
        decimals={statedDecimals(rival.reportIds, setpoint.reports, unit)}
        size="small"
        standing={{
          level: 'In dispute',
          asOf: newestDate(rival.reportIds, setpoint.reports),
          sources: linesFor(rival.reportIds, setpoint.reports, names),
        }}
      />
      {rival.slip !== undefined && <p>Likely slip: {rival.slip}.</p>}
    </>
  )
}

/** A report that disagrees without putting the value in dispute: named with its number, source and date. */
function RivalLine({ rival, setpoint, unit, names }: RivalProps) {
  return (
    <div className={styles.lead}>
      <p>
        Reported as well: {formatPressure(rival.pascals, unit)}
        {rival.slip === undefined ? '' : `, likely a slip (${rival.slip})`}
      </p>
      <SourceList
        sources={linesFor(rival.reportIds, setpoint.reports, names)}
        label="Sources of the other value"
      />
    </div>
  )
}

function Leads({
  standing,
  setpoint,
  unit,
  names,
  shown,
}: Pick<Props, 'standing' | 'setpoint' | 'unit' | 'names'> & { shown: readonly string[] }) {
  const leads = standing.leads.filter((lead) => !shown.includes(lead.reportId))
  if (leads.length === 0) return null
  return (
    <div className={styles.lead}>
      <h4>Leads, listed and not counted</h4>
      <SourceList
        label="Leads"
        sources={leads.flatMap((lead) => {
          const report = setpoint.reports.get(lead.reportId)
          if (report === undefined) return []
          const line = sourceLine(report, names, lead.why)
          return [{ ...line, words: `${formatPressure(lead.pascals, unit)}, Unverified. ${line.words}` }]
        })}
      />
    </div>
  )
}

function Reasons({ standing }: { standing: RatingStanding }) {
  if (standing.reasons.length === 0) return null
  return (
    <details className={styles.reasons}>
      <summary>Why {standing.level}</summary>
      <ul>
        {standing.reasons.map((reason) => (
          <li key={reason}>
            <Quiet inline>{reason}</Quiet>
          </li>
        ))}
      </ul>
    </details>
  )
}
