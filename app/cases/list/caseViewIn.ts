import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type CaseView, caseViewOf } from '@/lib/records/view/case/caseView'

const views = new WeakMap<TeamFile, Map<string, CaseView | undefined>>()

/**
 * A case of a team file, its readings held against the limits of their day; undefined when it is not on this device.
 * Worked out when it is first asked for, and once for a team file: a long list asks for the same cases at every key.
 */
export function caseViewIn(file: TeamFile, caseId: string): CaseView | undefined {
  const ofFile = views.get(file) ?? new Map<string, CaseView | undefined>()
  views.set(file, ofFile)
  if (!ofFile.has(caseId)) ofFile.set(caseId, caseViewOf(file, caseId))
  return ofFile.get(caseId)
}
