import type { CaseState, Complaint } from '@/lib/core/guard'
import type { Setpoint } from '../setpoint'
import type { JudgedReading } from './judgedReading'
import { actionOf } from './suspectReading'
import type { SuspectView } from './suspectView'

/** The rating that the complaint turns on, and how far it holds for what was read; undefined where none is on file. */
export function suspectRating(
  complaint: Complaint,
  view: SuspectView,
  setpoint: Setpoint,
  reading: JudgedReading | undefined,
): CaseState['rating'] {
  const asked = actionOf(complaint, setpoint.position.body.kind)
  const { rating } = setpoint
  if (asked === undefined) return undefined
  const action =
    rating[asked].level === 'Not on file' && rating.unstated.level !== 'Not on file' ? 'not stated' : asked
  const standing = action === 'not stated' ? rating.unstated : rating[action]
  if (standing.level === 'Not on file') return undefined
  return {
    level: standing.level,
    action,
    sources: standing.sources.map(({ source }) => source),
    stageAndElevation: stageAndElevation(standing.stage, view, setpoint, reading),
  }
}

/** Whether the rating holds for the stage that was read and the height at which the furnace stands. */
function stageAndElevation(
  statedStage: Setpoint['rating']['closes']['stage'],
  { file }: SuspectView,
  { rating, reports, position }: Setpoint,
  reading: JudgedReading | undefined,
): NonNullable<CaseState['rating']>['stageAndElevation'] {
  const ratedStage = statedStage === 'not stated' ? position.body.stage : statedStage
  const readStage = reading?.entry.body.stage
  if (readStage === undefined || ratedStage === 'not stated') return 'not checked'
  if (readStage !== ratedStage) return readStage === 'not stated' ? 'not checked' : 'wrong'
  const hasBand = [...reports.values()].some(({ body }) => body.elevationBand !== undefined)
  const heightKnown = !hasBand || file.furnace.body.elevationMetres !== undefined
  return heightKnown && rating.asks.length === 0 ? 'right' : 'not checked'
}
