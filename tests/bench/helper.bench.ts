import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { replayHelper, type Scores } from '@/lib/core/diagnosis'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { pastCases, replayCases } from '@/lib/records/view/case/pastCases'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { median, timed } from './measure'

export const name = 'helper'

const rounds = 5
const now = '2026-11-21T12:00:00Z'

/**
 * How good the helper is on the demo's replayed winters, against the base rates and the fixed checklist; and what it
 * costs to gather its cases out of the records: as past cases, as a history to replay, and the replay itself, each as
 * so many times the folding of the whole team file.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const making = timed(() => demoRecords(demoSeed))
  const records = making.result
  const took = { fold: [] as number[], past: [] as number[], history: [] as number[], replay: [] as number[] }
  const time = <T>(into: number[], work: () => T): T => {
    const { result, milliseconds } = timed(work)
    into.push(milliseconds)
    return result
  }
  let record: ReturnType<typeof replayHelper> | undefined
  for (let round = 0; round < rounds; round++) {
    const file = time(took.fold, () => foldTeamFile(records))
    time(took.past, () => pastCases(file, now))
    const cases = time(took.history, () => replayCases(file))
    record = time(took.replay, () => replayHelper({ catalogue: diagnosisCatalogue, cases }))
    if (round === 0) print(`${records.length} records, ${counting(file.cases).length} cases of four winters`)
  }
  if (record === undefined || !record.ok) throw new Error('The demo’s winters could not be replayed')

  const { helper, baseRates, checklist } = record.value
  for (const [way, scores] of Object.entries({
    helper,
    'base rates alone': baseRates,
    'fixed checklist': checklist,
  }))
    print(`${way.padEnd(17)} ${inFigures(scores)}`)

  const fold = median(took.fold)
  const times = (values: readonly number[]) =>
    `${median(values).toFixed(0)} ms, ${(median(values) / fold).toFixed(1)} times the fold`
  print(`folding the team file: ${fold.toFixed(0)} ms`)
  print(`gathering past cases: ${times(took.past)}`)
  print(`gathering their history: ${times(took.history)}`)
  print(`replaying it, 27 settings tried on each case: ${times(took.replay)}`)
  print(`making the demo’s records: ${making.milliseconds.toFixed(0)} ms`)
}

const inFigures = ({ cases, logLoss, logLossStandardError, brier, top1, top3 }: Scores): string =>
  `log loss ${logLoss.toFixed(3)} ± ${logLossStandardError.toFixed(3)}, Brier ${brier.toFixed(3)}, ` +
  `first ${top1.hits} of ${cases}, first three ${top3.hits} of ${cases} ` +
  `(${top3.interval95.map((end) => end.toFixed(2)).join(' to ')})`
