import type { CallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { gatherFacts } from '@/lib/records/view/callbacks/caseFacts'
import { gatherSwaps } from '@/lib/records/view/swaps/switchSwaps'
import { type SwapsShown, unjustifiedSwapsIn } from '@/lib/records/view/swaps/unjustifiedSwaps'
import type { Progress } from '../useWorked'

/** Works out what every replacement of a switch rested on: case by case, then replacement by replacement. */
export function* swapsSteps(
  file: TeamFile,
  window: CallbackWindow,
  now: string,
): Generator<Progress, SwapsShown> {
  yield* gatherFacts(file)
  yield* gatherSwaps(file)
  return unjustifiedSwapsIn(file, window, now)
}
