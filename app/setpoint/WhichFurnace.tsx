import type { PressureUnit } from '@/lib/core/pressure'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { FurnaceQuestions } from './FurnaceQuestions'
import { SourcesByBand } from './SourcesByBand'
import type { SetpointAddress } from './setpointAddress'
import styles from './setpointCard.module.css'

type Props = {
  setpoint: Setpoint
  address: SetpointAddress
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  /** The standings whose number depends on the answer, so that none is shown. */
  open: readonly ('closes' | 'opens' | 'unstated')[]
}

/** In the place of numbers that depend on the furnace: what is needed, where to type it, and the sources folded. */
export function WhichFurnace({ setpoint, address, unit, names, open }: Props) {
  const { asks } = setpoint.rating
  const ids = new Set(
    open.flatMap((key) => {
      const { reportIds, rivals, leads } = setpoint.rating[key]
      return [
        ...reportIds,
        ...rivals.flatMap((rival) => rival.reportIds),
        ...leads.map(({ reportId }) => reportId),
      ]
    }),
  )
  return (
    <section className={styles.standing}>
      <h3 className={styles.nothing}>Needs the {asks.join(' and the ')}</h3>
      <p>
        {open.length === 0
          ? 'The rating below may be another once it is known.'
          : 'The number on file depends on it, so none is shown yet. Look at the data plate.'}
      </p>
      <FurnaceQuestions asks={asks} address={address} />
      {ids.size > 0 && (
        <SourcesByBand
          reports={[...ids].flatMap((id) => setpoint.reports.get(id) ?? [])}
          {...{ unit, names }}
        />
      )}
    </section>
  )
}
