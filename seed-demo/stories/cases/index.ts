import type { CaseTelling } from '../../cases/course'
import type { CaseShowing } from '../../showing'
import { tellAirPathCases } from './airPath'
import { tellOpenCases } from './stillOpen'
import { tellSwitchCases } from './switches'
import { tellWaterCases } from './waterAndFan'

/** The hand-written cases. Each shows one thing, in the words of whoever was there; all of it is invented. */
export function tellToldCases(telling: CaseTelling): CaseShowing[] {
  return [
    tellAirPathCases(telling),
    tellWaterCases(telling),
    tellSwitchCases(telling),
    tellOpenCases(telling),
  ].flat()
}
