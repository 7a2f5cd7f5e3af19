import type { TeamFile } from '@/lib/records/fold/teamFile'
import { sayDate } from '../../ui/words/sayDate'

/** A link to a case, named by its furnace's site and the day it was opened. */
export function CaseLink({ id, file }: { id: string; file: TeamFile }) {
  const entry = file.cases.get(file.keptId(id))
  if (entry === undefined) return <>a case that is not on this device</>
  const site = file.furnaces.get(file.keptId(entry.body.furnaceId))?.body.siteLabel
  return (
    <a href={`/case/history?id=${entry.id}`}>
      {site ?? 'furnace not on this device'}, {sayDate(entry.at)}
    </a>
  )
}
