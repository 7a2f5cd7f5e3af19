export { coAirFree } from './coAirFree'
export {
  type DangerCode,
  dangerFindingIds,
  dangerSentence,
  everybodyOutIds,
  leaveOffIds,
} from './dangerFindings'
export { beforeEntering, type Danger, type DangerReadings, dangerIn, noPermission } from './dangerIn'
export { dangerOfFitted } from './foundFitted'
export { foundFittedOffer, mayFit } from './mayFit'
export { type Requirement, requirements, requirementText } from './requirement'
export { usualGuardSettings } from './settings'
export { type CurrentPart, currentPart, samePart } from './supersession'
export { type Replacement, switchReplacement } from './switchReplacement'
export {
  type CaseState,
  type Checked,
  type Complaint,
  type GuardSettings,
  type Listing,
  type LookName,
  lookNames,
  type OffFurnaceCheck,
  type Part,
  type PartClass,
  type PartNumber,
  type Supersession,
} from './types'
