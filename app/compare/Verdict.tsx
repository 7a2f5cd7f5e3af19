import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import {
  adviceText,
  type Comparison,
  type Instrument,
  type Judgement,
  judgementWords,
  type Reading,
  verdictWords,
  whileLeftOff,
} from '@/lib/core/reading'
import type { Result } from '@/lib/core/result'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { marksOf } from '../setpoint/marksOf'
import { behind, linesFor, newestDate } from '../setpoint/sourceLines'
import { DangerSheet } from '../ui/danger/DangerSheet'
import { Beside } from '../ui/paper/Beside'
import { Sheet } from '../ui/paper/Sheet'
import type { ColumnMark } from '../ui/waterColumn/column'
import { WaterColumn } from '../ui/waterColumn/WaterColumn'
import { LevelWord } from '../ui/words/LevelWord'
import { otherUnit } from '../ui/words/pressureWords'
import { Quiet } from '../ui/words/Quiet'
import { SourceList } from '../ui/words/SourceList'
import { Budget } from './Budget'
import { ClosesAgainAt } from './ClosesAgainAt'
import styles from './compare.module.css'
import { StillMissing } from './StillMissing'

type Props = {
  compared: Result<Comparison>
  reading: Reading
  instrument: Instrument
  setpoint: Setpoint
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  /** The furnace is left off: nothing is advised that runs it. */
  leftOff?: boolean
}

/** What the reading means: the verdict first, then by how much, then what to do, then what it rests on. */
export function Verdict({ compared, reading, instrument, setpoint, unit, names, leftOff = false }: Props) {
  const words = verdictWords(compared)
  if (!compared.ok) {
    return (
      <Sheet title={words[0]}>
        <p>{compared.problem.message}</p>
      </Sheet>
    )
  }
  const comparison = compared.value
  const judgement = comparison.run ?? comparison.start
  const heads = leftOff ? ['Left off: do not relight', ...words] : words
  const stops = comparison.advice.filter((code) => code.startsWith('stop-'))
  return (
    <Sheet
      title={stops.length > 0 ? 'Stop' : heads.length === 0 ? 'At rest' : heads[0]}
      sub={heads.slice(stops.length > 0 ? 0 : 1).join(' · ') || undefined}
    >
      {stops.length > 0 && <Stop codes={stops} />}
      <Beside
        picture={
          <WaterColumn
            unit={unit}
            sense={reading.sense}
            marks={marksFor(setpoint)}
            reading={{
              pascals: judgement?.judgedPascals ?? reading.samples.at(-1)!,
              uncertaintyPascals: judgement?.standardUncertaintyPascals ?? 0,
            }}
            earlier={reading.samples.slice(0, -1).map((pascals) => ({ pascals }))}
          />
        }
      >
        {comparison.start !== undefined && (
          <Judged
            title="Will it start?"
            judgement={comparison.start}
            {...{ comparison, setpoint, unit, names, leftOff }}
          />
        )}
        {comparison.run !== undefined && (
          <Judged
            title="Will it stay on?"
            judgement={comparison.run}
            {...{ comparison, setpoint, unit, names, leftOff }}
          />
        )}
        {comparison.higherThanExpected === true && (
          <p>
            Higher than expected is not good margin: something on the inlet side may hold the air back. Look
            there first.
          </p>
        )}
        {comparison.higherThanExpected === undefined && (
          <Quiet>
            Whether it is higher than it should be can’t be judged: neither a baseline of this furnace nor a
            reported running range is on file.
          </Quiet>
        )}
      </Beside>
      {stops.length === 0 && (
        <Advice codes={leftOff ? whileLeftOff(comparison.advice) : comparison.advice} leftOff={leftOff} />
      )}
      {!leftOff && comparison.advice.includes('before-the-switch-is-called-faulty') && (
        <StillMissing {...{ comparison, instrument, setpoint }} />
      )}
      <Budget comparison={comparison} unit={unit} />
    </Sheet>
  )
}

type JudgedProps = Pick<Props, 'setpoint' | 'unit' | 'names'> & {
  title: string
  judgement: Judgement
  comparison: Comparison
  leftOff: boolean
}

function Judged({ title, judgement, comparison, setpoint, unit, names, leftOff }: JudgedProps) {
  const { file } = useDeviceState()
  const standing = setpoint.rating[judgement.against === 'not stated' ? 'unstated' : judgement.against]
  const ids = behind(standing)
  const margin = (pascals: number, inUnit: PressureUnit) =>
    `${pascals < 0 ? '−' : '+'}${formatPressure(Math.abs(pascals), inUnit)}`
  return (
    <section className={styles.judged}>
      <h3>{title}</h3>
      <p className={styles.verdict}>{judgementWords(judgement, comparison.kind)}</p>
      <p className={styles.margin}>
        <span>{margin(judgement.marginPascals, unit)}</span>{' '}
        <Quiet inline>
          {margin(judgement.marginPascals, otherUnit(unit))} against {againstWords[judgement.against]}{' '}
          {formatPressure(judgement.limit.pascals, unit)}
        </Quiet>
      </p>
      <p>{chanceWords(judgement)}</p>
      {judgement.thin && (
        <p>
          Thin: it holds by less than{' '}
          {judgement.guideline && formatPressure(judgement.guideline.pascals, unit)} (
          {judgement.guideline?.source}). That is no proof of a repair.
        </p>
      )}
      {judgement.sharedBy !== undefined && (
        <p>The rating is in dispute; all {judgement.sharedBy} values give this same verdict.</p>
      )}
      {!leftOff && judgement.moreSamples !== undefined && (
        <p>
          {typeof judgement.moreSamples === 'number'
            ? `${judgement.moreSamples} further separate starts could settle it. Take all of them, and judge them together.`
            : 'Only a finer manometer can settle it.'}
        </p>
      )}
      {standing.level !== 'Not on file' && (
        <div>
          <LevelWord level={standing.level} asOf={newestDate(ids, setpoint.reports)} />
          <SourceList
            sources={linesFor(ids, file, names)}
            label={`Sources of the value it is held against`}
          />
        </div>
      )}
      {judgement.against === 'opens' && (
        <ClosesAgainAt contacts={comparison.contacts} kind={comparison.kind} {...{ setpoint, unit, names }} />
      )}
    </section>
  )
}

const againstWords = {
  closes: 'closes at',
  opens: 'opens at',
  'not stated': 'a value whose action is not stated,',
} as const

/** The chance that the pressure reaches the limit, in words that a small or large number keeps honest. */
function chanceWords({ probabilityEnough }: Judgement): string {
  if (probabilityEnough > 0.999) return 'More than 999 in 1,000 that it reaches that point.'
  if (probabilityEnough < 0.001) return 'Less than 1 in 1,000 that it reaches that point.'
  return `About ${Math.round(probabilityEnough * 100)} in 100 that it reaches that point.`
}

function Advice({ codes, leftOff }: { codes: Comparison['advice']; leftOff: boolean }) {
  return (
    <section>
      <h3>What to do, in this order</h3>
      {leftOff && (
        <p>
          The furnace is left off: what would run it is left out here until that is lifted. The verdict is
          about the reading and lets nobody light it.
        </p>
      )}
      <ol className={styles.advice}>
        {codes.map((code) => (
          <li key={code}>
            <b>{stateWords[adviceText[code].state]}</b> {adviceText[code].sentence}
          </li>
        ))}
      </ol>
    </section>
  )
}

/** A danger stands alone: nothing else is advised beside it. */
function Stop({ codes }: { codes: Comparison['advice'] }) {
  return (
    <div role="alert" className={styles.stop}>
      {codes.map((code) => (
        <p key={code}>{adviceText[code].sentence}</p>
      ))}
      <DangerSheet />
    </div>
  )
}

const stateWords = {
  'power off': 'Power off:',
  'gas off, inducer only': 'Gas off, inducer only:',
  running: 'Running:',
  outside: 'Outside:',
  'at rest': 'At rest:',
} as const

const marksFor = ({ rating, reports }: Setpoint): ColumnMark[] => [
  ...marksOf(rating.closes, 'closes', reports),
  ...marksOf(rating.opens, 'opens', reports),
  ...marksOf(rating.unstated, 'not stated', reports),
]
