import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import { adviceText, type Comparison, verdictWords } from '@/lib/core/reading'
import type { Result } from '@/lib/core/result'
import styles from './compare.module.css'

type Props = { compared: Result<Comparison>; unit: PressureUnit; leftOff: boolean }

/**
 * The verdict in a line that stays in sight while the keys are pressed, and leads to the whole of it. It names the
 * standing of what the reading was held against, because a verdict is no better than its rating. A danger stands there
 * in place of any verdict; while the furnace is left off, that stands before it.
 */
export function VerdictLine({ compared, unit, leftOff }: Props) {
  const stop = compared.ok ? compared.value.advice.find((code) => code.startsWith('stop-')) : undefined
  return (
    <a href="#verdict" className={styles.line}>
      <output>
        {leftOff && <b className={styles.stopLine}>Left off: do not relight. </b>}
        {stop === undefined ? (
          <>
            <b>{verdictWords(compared)[0] ?? 'At rest'}</b>
            {compared.ok && <Margin comparison={compared.value} unit={unit} />}
          </>
        ) : (
          <b className={styles.stopLine}>{adviceText[stop].sentence}</b>
        )}
      </output>
    </a>
  )
}

function Margin({ comparison, unit }: { comparison: Comparison; unit: PressureUnit }) {
  const judgement = comparison.run ?? comparison.start
  if (judgement === undefined) return null
  const { marginPascals } = judgement
  return (
    <span>
      {' '}
      by {formatPressure(Math.abs(marginPascals), unit)} {marginPascals < 0 ? 'below' : 'above'} a rating that
      is {comparison.standing}
    </span>
  )
}
