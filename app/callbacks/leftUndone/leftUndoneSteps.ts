import type { TeamFile } from '@/lib/records/fold/teamFile'
import { gatherFacts } from '@/lib/records/view/callbacks/caseFacts'
import { type LeftUndone, leftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import type { Progress } from '../useWorked'

/** Works out what is left undone: case by case first, then the lists. */
export function* leftUndoneSteps(file: TeamFile, now: string): Generator<Progress, LeftUndone> {
  yield* gatherFacts(file)
  return leftUndone(file, now)
}
