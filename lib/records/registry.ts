import type { RecordKind } from './envelope'
import { equipmentRange } from './kinds/equipmentRange'
import { foundFitted } from './kinds/foundFitted'
import { furnace } from './kinds/furnace'
import { gauge } from './kinds/gauge'
import { maker } from './kinds/maker'
import { part } from './kinds/part'
import { position } from './kinds/position'
import { preference } from './kinds/preference'
import { ratingRequest } from './kinds/ratingRequest'
import { repair } from './kinds/repair'
import { report } from './kinds/report'
import { sameAs } from './kinds/sameAs'
import { settlement } from './kinds/settlement'
import { supersession } from './kinds/supersession'
import { withdrawal } from './kinds/withdrawal'
import { withholding } from './kinds/withholding'

/** Every kind of record there is: who may add it, who may see it, and every version it was ever written in. */
export const recordKinds: Readonly<Record<string, RecordKind>> = Object.fromEntries(
  [
    maker,
    equipmentRange,
    position,
    part,
    supersession,
    furnace,
    gauge,
    report,
    settlement,
    withdrawal,
    withholding,
    sameAs,
    ratingRequest,
    foundFitted,
    repair,
    preference,
  ].map((kind) => [kind.kind, kind]),
)
