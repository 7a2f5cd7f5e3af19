import { unlistedCause } from '@/lib/core/diagnosis'
import { electricalAndSetUpTruth } from './electricalAndSetUp'
import { fanTruth } from './fan'
import { hoseAndExchangerTruth } from './hoseAndExchanger'
import { intakeTruth } from './intake'
import { switchTruth } from './theSwitch'
import type { TrueCause } from './types'
import { ventTruth } from './vent'
import { waterTruth } from './water'

export type { Effect, TrueCause } from './types'

/** What no list has a name for: it shows nothing in particular. */
const unlisted: TrueCause = {
  share: [2.5, 2.5, 2.5],
  shows: {},
  effect: { cold: [0.7, 1], hot: [0.8, 1] },
  mended: ['Put right; see the note'],
  minutes: [30, 90],
}

/**
 * Why furnaces really stop in the invented valley: the truth behind the demo's cases. It is written down in numbers of
 * its own and takes nothing from the catalogue but the names, so that the catalogue's figures can be wrong about it.
 */
export const trueCauses: Readonly<Record<string, TrueCause>> = {
  ...ventTruth,
  ...intakeTruth,
  ...waterTruth,
  ...fanTruth,
  ...hoseAndExchangerTruth,
  ...electricalAndSetUpTruth,
  ...switchTruth,
  [unlistedCause]: unlisted,
}

/** @throws RangeError if there is no such cause */
export function truthOf(cause: string): TrueCause {
  const found = trueCauses[cause]
  if (found === undefined) throw new RangeError(`The demo knows nothing of a cause “${cause}”`)
  return found
}
