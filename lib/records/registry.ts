import type { RecordKind } from './envelope'
import { answerSeen } from './kinds/answerSeen'
import { asksToo } from './kinds/asksToo'
import { baseline } from './kinds/baseline'
import { callAttempt } from './kinds/callAttempt'
import { caseKind } from './kinds/case'
import { combustionTest } from './kinds/combustionTest'
import { dangerAnswer } from './kinds/dangerAnswer'
import { ending } from './kinds/ending'
import { equipmentRange } from './kinds/equipmentRange'
import { finding } from './kinds/finding'
import { fittedPart } from './kinds/fittedPart'
import { foundFitted } from './kinds/foundFitted'
import { furnace } from './kinds/furnace'
import { gauge } from './kinds/gauge'
import { importKind } from './kinds/import'
import { importedLines } from './kinds/importedLines'
import { lifting } from './kinds/lifting'
import { maker } from './kinds/maker'
import { organisation } from './kinds/organisation'
import { part } from './kinds/part'
import { photo } from './kinds/photo'
import { position } from './kinds/position'
import { preference } from './kinds/preference'
import { promise } from './kinds/promise'
import { ratingRequest } from './kinds/ratingRequest'
import { reading } from './kinds/reading'
import { repair } from './kinds/repair'
import { report } from './kinds/report'
import { sameAs } from './kinds/sameAs'
import { settlement } from './kinds/settlement'
import { shutDownNotice } from './kinds/shutDownNotice'
import { supersession } from './kinds/supersession'
import { switchCheck } from './kinds/switchCheck'
import { tag } from './kinds/tag'
import { visit } from './kinds/visit'
import { warrantyAnswer } from './kinds/warrantyAnswer'
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
    caseKind,
    visit,
    finding,
    reading,
    baseline,
    combustionTest,
    ending,
    shutDownNotice,
    lifting,
    dangerAnswer,
    fittedPart,
    switchCheck,
    asksToo,
    promise,
    organisation,
    callAttempt,
    answerSeen,
    tag,
    photo,
    importKind,
    importedLines,
    warrantyAnswer,
  ].map((kind) => [kind.kind, kind]),
)
