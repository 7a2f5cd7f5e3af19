import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'

/**
 * The furnace that a record names, or that its case or its notice does; undefined where it names none, or where what
 * it names is not on this device. No record is taken in whose case, visit and furnace do not belong together.
 */
export function furnaceNamed(file: TeamFile, { body }: Entry<unknown>): string | undefined {
  const { furnaceId, caseId, noticeId } = body as { furnaceId?: string; caseId?: string; noticeId?: string }
  const named =
    furnaceId ??
    (caseId === undefined ? undefined : file.cases.get(file.keptId(caseId))?.body.furnaceId) ??
    (noticeId === undefined ? undefined : file.shutDownNotices.get(noticeId)?.body.furnaceId)
  return named === undefined ? undefined : file.keptId(named)
}
