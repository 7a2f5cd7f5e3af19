import { fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import { allOthers, type Curve, type CurveFigure } from '@/lib/records/view/callbacks/curveFigure'
import { ChartFrame } from '../ui/charts/ChartFrame'
import { LineSample, SurvivalChart } from '../ui/charts/SurvivalChart'
import { DataTable } from '../ui/paper/DataTable'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import type { Behind } from './behind'
import { CaseFigure } from './CaseFigure'
import styles from './callbacks.module.css'
import { daysToRead, enoughUntil, readOff } from './curveWords'
import { differenceWords, intervalWords, perCentWords } from './figureWords'
import { OpenedCases } from './OpenedCases'
import { linkOf, type SectionProps } from './section'
import { usePrinting } from './usePrinting'

type Props = SectionProps & {
  /** Names the curves in addresses. */
  name: string
  title: string
  figure: CurveFigure
  /** The group in words. */
  groupWords: (key: string) => string
  /** A sentence that stands beside the picture. */
  beside?: string
  /** How the groups came about, if that has to be said. */
  grouped?: string
}

/** How long furnaces stayed without a callback after their first fix, group by group. */
export function TimeToCallback({
  name,
  title,
  figure,
  groupWords,
  beside,
  grouped,
  figures,
  file,
  opening,
}: Props) {
  const printing = usePrinting()
  const { curves, test } = figure
  const days = daysToRead(figure)
  const calendar = figures.question.timeScale
  const wordsOf = ({ key }: Curve) =>
    key !== allOthers ? groupWords(key) : curves.length === 1 ? 'All together' : 'All others together'
  const behind = new Map(
    curves.flatMap((curve) =>
      [undefined, ...days].map((day) => [
        keyOf(name, curve.key, day),
        behindCurve(name, wordsOf(curve), curve, day),
      ]),
    ),
  )
  const of = (curve: Curve, day?: number) => behind.get(keyOf(name, curve.key, day))!
  const callbacks = curves.reduce((sum, { cameBackIds }) => sum + cameBackIds.length, 0)
  if (curves.length === 0)
    return (
      <Sheet title={title}>
        <p>No furnace has a proven repair in this time, so there is nothing to watch yet.</p>
      </Sheet>
    )
  const key = (
    <ul className={styles.key} aria-label={`Key: ${title}`}>
      {curves.map((curve, place) => (
        <li key={curve.key}>
          <b>{place + 1}</b>
          <LineSample place={place} />
          <span>
            {wordsOf(curve)} (
            {curve.watchedDays.length === 1 ? '1 furnace' : `${curve.watchedDays.length} furnaces`})
          </span>
        </li>
      ))}
    </ul>
  )
  return (
    <Sheet
      title={title}
      sub={`From a furnace’s first proven repair in this time to its first callback, in ${calendar}.`}
    >
      {days.length === 0 && key}
      {days.length === 0 ? (
        <p>Nobody was watched for 30 days yet: too early for a picture.</p>
      ) : (
        <ChartFrame
          above={key}
          legend="The share without a callback. A bar is how far chance alone could move it (19 times in 20). Faint and open: fewer than ten are still watched."
        >
          {(width) => (
            <SurvivalChart
              width={width}
              days={days}
              label={`Share without a callback over time: ${title}`}
              daysWords={calendar}
              curves={curves.map((curve) => ({
                key: curve.key,
                steps: curve.steps,
                enoughUntil: enoughUntil(curve),
                lastDay: curve.watchedDays.at(-1) ?? 0,
                marks: days.flatMap((day) => {
                  const read = readOff(curve, day)
                  return read.atRisk === 0
                    ? []
                    : [{ ...read, says: `${wordsOf(curve)}, day ${day}: ${survivalWords(curve, day)}` }]
                }),
              }))}
              linkOf={(key, day) => linkOf(behind.get(keyOf(name, key, day))!, opening)}
            />
          )}
        </ChartFrame>
      )}
      {beside && <p className={styles.said}>{beside}</p>}
      <p>
        {differenceWords(test, callbacks, Math.min(...curves.map(({ watchedDays }) => watchedDays.length)))}
      </p>
      <Fold summary="The picture in figures" open={printing}>
        {() => (
          <DataTable
            caption="Without a callback"
            rowKey={({ key }) => key}
            rows={curves}
            columns={[
              { key: 'group', words: 'Group', cell: wordsOf },
              {
                key: 'back',
                words: 'Called back',
                cell: (curve) => {
                  const says = `${curve.cameBackIds.length} of ${curve.watchedDays.length}`
                  return (
                    <CaseFigure of={of(curve)} opening={opening} says={says}>
                      {says}
                    </CaseFigure>
                  )
                },
              },
              ...days.map((day) => ({
                key: `${day}`,
                words: `Day ${day}`,
                cell: (curve: Curve) => (
                  <CaseFigure of={of(curve, day)} opening={opening} says={survivalWords(curve, day)}>
                    {survivalWords(curve, day)}
                  </CaseFigure>
                ),
              })),
              { key: 'median', words: 'Half called back by', cell: medianWords },
            ]}
            empty={null}
          />
        )}
      </Fold>
      <Quiet>
        Watching a furnace ends without a callback when it is left off, its repair is declined, it is
        replaced, or today. One repair a furnace, the first, because several of one furnace are not
        independent of each other.
        {grouped && ` ${grouped}`}
      </Quiet>
      <OpenedCases of={[...behind.values()]} open={opening.open} file={file} callbacks={figures.callbacks} />
    </Sheet>
  )
}

const keyOf = (name: string, group: string, day?: number): string =>
  day === undefined ? `${name}-${group}` : `${name}-${group}-${day}`

/** The fixes of a group by what became of them, up to a day if one is named. */
function behindCurve(name: string, words: string, curve: Curve, day?: number): Behind {
  const { censored, cameBackIds } = curve
  if (day !== undefined)
    return {
      key: keyOf(name, curve.key, day),
      title: `First repairs up to day ${day}: ${words}`,
      groups: () => groupsUpTo(day, curve),
    }
  return {
    key: keyOf(name, curve.key),
    title: `First repairs: ${words}`,
    groups: () => [
      { words: 'Called back', ids: cameBackIds },
      { words: 'Left off meanwhile', ids: censored['left off'] },
      { words: 'A repair declined meanwhile', ids: censored['repair declined'] },
      { words: 'Furnace replaced meanwhile', ids: censored['furnace replaced'] },
      { words: 'No callback until today', ids: censored['end of observation'] },
    ],
  }
}

function groupsUpTo(day: number, { steps, cameBackIds, censored }: Curve): ReturnType<Behind['groups']> {
  const byDay = steps.filter(({ time }) => time <= day).flatMap(({ fixIds }) => fixIds)
  const called = new Set(byDay)
  return [
    { words: 'Called back by then', ids: byDay },
    {
      words: 'Not called back by then, or not watched so long',
      ids: [...cameBackIds.filter((id) => !called.has(id)), ...Object.values(censored).flat()],
    },
  ]
}

function survivalWords(curve: Curve, day: number): string {
  const { survival, interval, atRisk } = readOff(curve, day)
  if (atRisk === 0) return 'nobody watched so long'
  if (atRisk < fewestForShare) return `too few left (${atRisk})`
  if (survival === 1) return `all (${atRisk} still watched)`
  return interval === undefined ? 'none' : `${perCentWords(survival)}, between ${intervalWords(interval)}`
}

function medianWords({ median, watchedDays }: Curve): string {
  if (watchedDays.length < fewestForShare) return 'too few to say'
  if (!median.ok) return 'not reached'
  const [from, to] = median.value.interval
  return `day ${median.value.time}, between ${from} and ${to === 'not reached' ? 'never' : to}`
}
