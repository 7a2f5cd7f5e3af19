import type { CaseTelling } from '../../cases/callTypes'
import type { CaseShowing } from '../../showing'
import { tellIntakeCases } from './intake'
import { tellOpenCases } from './stillOpen'
import { tellSwitchCases } from './switches'
import { tellVentCases } from './vent'
import { tellWaterCases } from './water'

/** The hand-written cases. Each shows one thing, in the words of whoever was there; all of it is invented. */
export function tellToldCases(telling: CaseTelling): CaseShowing[] {
  return [
    tellVentCases(telling),
    tellIntakeCases(telling),
    tellWaterCases(telling),
    tellSwitchCases(telling),
    tellOpenCases(telling),
  ].flat()
}
