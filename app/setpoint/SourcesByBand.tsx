import type { PressureUnit } from '@/lib/core/pressure'
import type { Entry } from '@/lib/records/fold/entry'
import type { ReportBody } from '@/lib/records/kinds/report'
import { bandWords, coverWords } from '@/lib/records/view/coverWords'
import { useDeviceState } from '../device/deviceContext'
import { SetpointNumber } from '../ui/words/SetpointNumber'
import styles from './setpointCard.module.css'
import { sourceLine, statedDecimals } from './sourceLines'

type Props = {
  reports: readonly Entry<ReportBody>[]
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

/**
 * What each source says, under the elevations that it says it for, the lowest first: folded away, so that no number
 * of another band is read at a glance.
 */
export function SourcesByBand({ reports, unit, names }: Props) {
  const { file } = useDeviceState()
  const sorted = reports.toSorted(byElevation)
  const bands = [...new Set(sorted.map(({ body }) => bandWords(body)))]
  return (
    <details>
      <summary>What sources say, by elevation</summary>
      {bands.map((band) => (
        <section key={band} className={styles.lead} aria-label={band}>
          <h3>{band}</h3>
          {sorted
            .filter(({ body }) => bandWords(body) === band)
            .map((report) => (
              <div key={report.id}>
                <SetpointNumber
                  {...report.body}
                  unit={unit}
                  decimals={statedDecimals([report.id], new Map([[report.id, report]]), unit)}
                  size="line"
                  standing={{
                    level: 'Unverified',
                    asOf: report.body.saidOn ?? report.at,
                    sources: [sourceLine(report, file, names)],
                  }}
                />
                <p>Holds for: {coverWords(report.body)}</p>
              </div>
            ))}
        </section>
      ))}
    </details>
  )
}

const lowest = ({ body: { elevationBand } }: Entry<ReportBody>): number =>
  elevationBand === undefined ? Number.MAX_VALUE : (elevationBand.fromMetres ?? -Number.MAX_VALUE)

const byElevation = (one: Entry<ReportBody>, other: Entry<ReportBody>): number =>
  Math.sign(lowest(one) - lowest(other)) || (one.at < other.at ? -1 : 1)
