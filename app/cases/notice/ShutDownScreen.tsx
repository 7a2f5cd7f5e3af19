'use client'

import { useSearchParams } from 'next/navigation'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { standingNotice } from '@/lib/records/view/case/notices'
import { useDeviceState } from '../../device/deviceContext'
import { furnaceWords } from '../../equipment/candidates'
import { Empty } from '../../ui/answers/Empty'
import { Caution } from '../../ui/danger/Caution'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { sayDate } from '../../ui/words/sayDate'
import { openVisit } from '../work/openVisit'
import { NoticeFields } from './NoticeFields'

/** Writes the notice under which a furnace is left off, on its own or as the end of a visit. */
export function ShutDownScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const furnace = file.furnaces.get(file.keptId(query.get('furnace') ?? ''))
  if (furnace === undefined)
    return (
      <Empty
        page
        what="Which furnace is left off?"
        why="The address names no furnace that is on this device. The gas and the power come first, whatever is on it."
        todo={<a href="/">Find the furnace by site, model or serial</a>}
      />
    )
  return <ShutDown furnace={furnace} file={file} query={query} />
}

type Props = { furnace: Entry<FurnaceBody>; file: TeamFile; query: URLSearchParams }

function ShutDown({ furnace, file, query }: Props) {
  const view = caseViewOf(file, query.get('case') ?? '')
  const ofCase = view?.file.furnace.id === furnace.id ? view : undefined
  const older = file.shutDownNotices.get(query.get('again') ?? '')
  const standing = standingNotice(file, furnace.id)
  const asked = query.get('visit')
  const open = ofCase?.file.visits.find(({ entry, endings }) => entry.id === asked && endings.length === 0)
  return (
    <Stack>
      <PageHeader
        above={
          ofCase === undefined ? (
            <a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>
          ) : (
            <a href={`/case?id=${ofCase.file.entry.id}`}>The case at {furnace.body.siteLabel}</a>
          )
        }
        title="Leave the furnace off"
        lead="The shut-down notice: what was found, what is off, who was told. It prints on one page and stands until somebody lifts it."
      />
      <Caution />
      {standing !== undefined && standing.entry.id !== older?.id && (
        <p>
          It is left off already, since {sayDate(standing.entry.body.on)}: {standing.entry.body.found}{' '}
          <a href={`/notice?id=${standing.entry.id}`}>See that notice.</a> One that you write now stands
          beside it, and each has to be lifted.
        </p>
      )}
      <NoticeFields
        furnace={furnace}
        file={file}
        older={older?.withdrawn === undefined ? older : undefined}
        view={ofCase}
        openVisitId={open?.entry.id ?? (ofCase && openVisit(ofCase))}
        endsVisit={open !== undefined}
      />
    </Stack>
  )
}
