import { readingSituations } from '@/lib/catalogue/fromReadings/situations'
import { betweenWords, senseWords, stageWords, tapWords } from '@/lib/catalogue/switchKinds'
import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import { verdictWords } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { gaugeThen } from '@/lib/records/view/case/gaugeThen'
import type { JudgedReading } from '@/lib/records/view/case/judgedReading'
import { WaterColumn } from '../../ui/waterColumn/WaterColumn'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { otherUnit } from '../../ui/words/pressureWords'
import { sayDate } from '../../ui/words/sayDate'
import { stopAfter } from '../../ui/words/stopAfter'
import { capitalised } from '../work/capitalised'
import styles from './history.module.css'
import { LimitsThen } from './LimitsThen'
import { onTheClock } from './momentWords'
import { readingColumn } from './readingColumn'

type Props = {
  judged: JudgedReading
  file: TeamFile
  names: ReadonlyMap<string, string>
  unit: PressureUnit
}

/** A reading with its water column: what it meant by the limit that stood that day, and how far its gauge was good. */
export function ReadingTold({ judged, file, names, unit }: Props) {
  const { entry, comparison } = judged
  const { body, at } = entry
  const gauge = gaugeThen(file, body.gaugeId, at)
  const position =
    body.positionId === undefined ? undefined : file.positions.get(file.keptId(body.positionId))
  const column = readingColumn(judged, gauge, unit)
  const judgement = comparison.ok ? (comparison.value.run ?? comparison.value.start) : undefined
  return (
    <div className={styles.reading}>
      {column !== undefined && (
        <div className={styles.column}>
          <WaterColumn {...column} />
        </div>
      )}
      <div>
        <p>
          <b>{verdictWords(comparison).join('. ') || 'At rest'}</b>
          {judgement !== undefined &&
            `, ${formatPressure(Math.abs(judgement.marginPascals), unit)} ${judgement.marginPascals < 0 ? 'below' : 'above'} its limit`}
          . {body.when === 'as found' ? 'As found' : 'After the repair'},{' '}
          {position?.body.name ?? 'no switch named'}, {body.phase}:{' '}
          {body.samples.map((pascals) => formatPressure(pascals, unit)).join('; ')} (
          {body.samples.map((pascals) => formatPressure(pascals, otherUnit(unit))).join('; ')}), written{' '}
          <AsPrinted text={body.asTyped} />
          {stopAfter(body.asTyped)} {howTaken(body)}
        </p>
        {!comparison.ok && <p>{comparison.problem.message}</p>}
        <LimitsThen {...{ body, at, file, names, unit }} />
        <p>
          {gauge === undefined ? (
            'The gauge is not on record: how far off it may have been is not known, so nothing is drawn.'
          ) : (
            <>
              Gauge <a href={`/record?id=${gauge.id}`}>{gauge.body.name}</a>,{' '}
              {body.zeroed ? 'zeroed' : 'not zeroed'},{' '}
              {calibrationThen(gauge.body.calibrationDue, onTheClock(at).day)}.
            </>
          )}
        </p>
        {body.note !== undefined && <p>Note: {body.note}</p>}
      </div>
    </div>
  )
}

/** Where, how and in which state it was taken. */
function howTaken(body: ReadingBody): string {
  const { lowest, highest, secondsWatched } = body
  const words = [
    senseWords[body.sense],
    betweenWords[body.between],
    ...(body.tap === 'not stated' ? [] : [tapWords[body.tap]]),
    stageWords[body.stage],
    `door ${body.door}`,
    body.byTeeAtTheSwitch ? 'by a tee at the switch' : 'not said to be teed at the switch',
    `contact ${body.contacts}`,
    ...(lowest === undefined && highest === undefined ? [] : ['lowest and highest held']),
    ...(secondsWatched === undefined ? [] : [`watched for ${secondsWatched} s`]),
    ...(body.situation === 'as found' ? [] : [readingSituations[body.situation].words.toLowerCase()]),
  ]
  return `${capitalised(words.join(', '))}.`
}

/** How the gauge stood with its calibration on the day of the reading, year-month-day. */
function calibrationThen(due: string | undefined, day: string): string {
  if (due === undefined) return 'no calibration date on file'
  return day <= due ? `calibrated until ${sayDate(due)}` : `its calibration had run out on ${sayDate(due)}`
}
