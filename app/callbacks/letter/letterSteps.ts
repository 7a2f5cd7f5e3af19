import type { TeamFile } from '@/lib/records/fold/teamFile'
import { gatherFacts } from '@/lib/records/view/callbacks/caseFacts'
import { type LetterFigures, letterFigures } from '@/lib/records/view/letter/letterFigures'
import { gatherSwaps } from '@/lib/records/view/swaps/switchSwaps'
import type { Progress } from '../useWorked'

/** Works out the letter’s figures: case by case and replacement by replacement first. */
export function* letterSteps(
  file: TeamFile,
  month: string,
  now: string,
): Generator<Progress, { month: string; figures: LetterFigures }> {
  yield* gatherFacts(file)
  yield* gatherSwaps(file)
  return { month, figures: letterFigures(file, month, now) }
}
