import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'

/**
 * The furnaces that a record is of: the one that it names, and those of its case and of its notice, each once. None
 * where it names none, or where what it names is not on this device. They are one when the record is taken in, but they
 * may be two once a wrong join is taken back: what was said meanwhile on a case of the one names the other.
 */
export function furnacesNamed(file: TeamFile, { body }: Entry<unknown>): string[] {
  const { furnaceId, caseId, noticeId } = body as { furnaceId?: string; caseId?: string; noticeId?: string }
  const named = [
    furnaceId,
    caseId === undefined ? undefined : file.cases.get(file.keptId(caseId))?.body.furnaceId,
    noticeId === undefined ? undefined : file.shutDownNotices.get(noticeId)?.body.furnaceId,
  ]
  return [...new Set(named.filter((id) => id !== undefined).map(file.keptId))]
}
