import type { PressureUnit } from '@/lib/core/pressure'
import type { RatingStanding, Rival } from '@/lib/core/rating'
import type { Action, SourceKind } from '@/lib/core/vocabulary'
import { coverWords } from '@/lib/records/view/coverWords'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { type SettledAgainst, settledAgainst } from '@/lib/records/view/settledAgainst'
import { useDeviceState } from '../device/deviceContext'
import { actionWords } from '../ui/words/actionWords'
import { LevelWord } from '../ui/words/LevelWord'
import { lookAgainAt } from '../ui/words/lookAgain'
import { Quiet } from '../ui/words/Quiet'
import { SetpointNumber } from '../ui/words/SetpointNumber'
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
  const { file } = useDeviceState()
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
  const restsOn = standing.leads.filter((lead) => standing.reportIds.includes(lead.reportId))
  const slips = standing.rivals.filter((rival) => !rival.disputes)
  return (
    <section className={styles.standing}>
      <SetpointNumber
        {...standing}
        action={action}
        unit={unit}
        decimals={statedDecimals(ids, reports, unit)}
        size={disputing.length > 0 || restsOn.length > 0 ? 'small' : size}
        standing={{
          level: standing.level,
          asOf: newestDate(ids, reports),
          sources: linesFor(ids, file, names),
        }}
      />
      {lookAgainAt(standing).map((sentence) => (
        <p key={sentence} className={styles.found}>
          <b>Look again.</b> {sentence}
        </p>
      ))}
      {restsOn.map(({ reportId, why }) => {
        const report = reports.get(reportId)
        return (
          report !== undefined && (
            <p key={reportId}>
              A lead only. {why} Holds for: {coverWords(report.body)}.
            </p>
          )
        )
      })}
      {settledAgainst(file, ids).map((against) => (
        <p key={against.settlement.id} className={styles.found}>
          {againstWords(against)} <a href={`/record?id=${against.settlement.id}`}>See how</a>
        </p>
      ))}
      {disputing.length > 0 && (
        <div className={styles.against}>
          <h3>What stands against it</h3>
          {disputing.map((rival) => (
            <RivalNumber key={rival.reportIds.join()} {...{ rival, action, setpoint, unit, names }} />
          ))}
        </div>
      )}
      {slips.map((rival) => (
        <RivalLine key={rival.reportIds.join()} {...{ rival, action, setpoint, unit, names }} />
      ))}
      <Reasons standing={standing} />
      <Leads {...{ standing, action, setpoint, unit, names, shown: ids }} />
    </section>
  )
}

const settledFor = {
  closes: 'where it closes',
  opens: 'where it opens',
  'not stated': 'a number without its word',
} as const

/** What both numbers were said by, in a word. */
const saidBy: Readonly<Record<SourceKind, string>> = {
  'factory switch label': 'label',
  'unknown switch label': 'label',
  'data plate': 'data plate',
  'current literature': 'sheet',
  'older literature': 'sheet',
  'factory support': 'call',
  distributor: 'call',
  'parts listing': 'listing',
  'bench check': 'bench check',
  remembered: 'source',
  imported: 'list',
}

/** What the number shares with one that was overruled. */
const againstWords = ({ report, settlement }: SettledAgainst): string =>
  `The same ${saidBy[report.body.source]} was settled against for ${settledFor[settlement.body.action]}.`

type RivalProps = Pick<Props, 'setpoint' | 'unit' | 'names'> & { rival: Rival }

function RivalNumber({ rival, action, setpoint, unit, names }: RivalProps & { action: Action }) {
  const { file } = useDeviceState()
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
          sources: linesFor(rival.reportIds, file, names),
        }}
      />
      {rival.slip !== undefined && <p>Likely slip: {rival.slip}.</p>}
    </>
  )
}

/** A report that disagrees without putting the value in dispute: named with its number, level, source and date. */
function RivalLine({ rival, action, setpoint, unit, names }: RivalProps & { action: Action }) {
  const { file } = useDeviceState()
  return (
    <div className={styles.lead}>
      <p>Reported as well{rival.slip === undefined ? '' : `, likely a slip: ${rival.slip}`}</p>
      <SetpointNumber
        {...rival}
        action={action}
        unit={unit}
        decimals={statedDecimals(rival.reportIds, setpoint.reports, unit)}
        size="line"
        standing={{
          level: 'Unverified',
          asOf: newestDate(rival.reportIds, setpoint.reports),
          sources: linesFor(rival.reportIds, file, names),
        }}
      />
    </div>
  )
}

type LeadProps = Pick<Props, 'standing' | 'action' | 'setpoint' | 'unit' | 'names'> & {
  shown: readonly string[]
}

/** Leads stand apart: each with its number, its level and its date, and with why it counts for nothing yet. */
function Leads({ standing, action, setpoint, unit, names, shown }: LeadProps) {
  const { file } = useDeviceState()
  const leads = standing.leads.filter((lead) => !shown.includes(lead.reportId))
  if (leads.length === 0) return null
  return (
    <div className={styles.lead}>
      <h3>Leads, listed and not counted</h3>
      {leads.map((lead) => {
        const report = setpoint.reports.get(lead.reportId)
        return (
          report !== undefined && (
            <div key={lead.reportId}>
              <SetpointNumber
                pascals={lead.pascals}
                limit={lead.limit}
                action={action}
                unit={unit}
                decimals={statedDecimals([lead.reportId], setpoint.reports, unit)}
                size="line"
                standing={{
                  level: 'Unverified',
                  asOf: lead.saidAt,
                  sources: [sourceLine(report, file, names)],
                }}
              />
              <Quiet>{lead.why}</Quiet>
            </div>
          )
        )
      })}
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
      <p>
        <a href="/sources">How far each source is believed, and what settled disputes taught</a>
      </p>
    </details>
  )
}
