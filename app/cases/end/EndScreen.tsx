'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { missingToBlameSwitch } from '@/lib/records/view/case/blamedSwitch'
import type { VisitFile } from '@/lib/records/view/case/caseFile'
import { type CaseView, caseViewOf } from '@/lib/records/view/case/caseView'
import { positionsToProve } from '@/lib/records/view/case/positionsToProve'
import { useDeviceState } from '../../device/deviceContext'
import { CasePhotos } from '../../photo/CasePhotos'
import { Empty } from '../../ui/answers/Empty'
import { Caution } from '../../ui/danger/Caution'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { sayDate } from '../../ui/words/sayDate'
import { momentWords } from '../history/momentWords'
import { openVisit } from '../work/openVisit'
import { Ended } from './Ended'
import { EndForm } from './EndForm'
import styles from './end.module.css'
import { shutDownHref } from './StillMissing'

/** Ends a visit of a case, or shows how it ended. */
export function EndScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const id = query.get('id') ?? ''
  // Held against the limits that were written down with each reading: what counts in every figure later on.
  const view = useMemo(() => caseViewOf(file, id), [file, id])
  if (view === undefined)
    return (
      <Empty
        page
        what="This case is not on this device"
        why="The address may be cut short, or the case was recorded elsewhere and has not reached this device."
        todo={<a href="/cases">All cases</a>}
      />
    )
  const visitId = query.get('visit') ?? openVisit(view)
  const visit = view.file.visits.find(({ entry }) => entry.id === visitId)
  if (visit === undefined)
    return (
      <Empty
        page
        what="There is no visit to end"
        why="The address names no visit of this case that is on this device, or every visit of it has ended."
        todo={<a href={`/case?id=${view.file.entry.id}`}>Go to the case, and begin a visit there</a>}
      />
    )
  return <End key={visit.entry.id} view={view} visit={visit} query={query} />
}

type Props = { view: CaseView; visit: VisitFile; query: URLSearchParams }

function End({ view, visit, query }: Props) {
  const { file } = useDeviceState()
  const { entry, furnace } = view.file
  const older = visit.endings.find(({ id }) => id === query.get('again'))
  // Once the form is open it stays, although somebody else ends the visit meanwhile: nothing typed is lost.
  const [wasOpen, setWasOpen] = useState(visit.endings.length === 0)
  const [openedAt] = useState(() => new Date().toISOString())
  const asksForForm = older !== undefined || query.get('own') !== null
  const facts = {
    file: view.file,
    judged: view.judged,
    openDangers: view.dangers.open,
    toProve: positionsToProve(file, view.file),
    missingToBlame: (cause: string | undefined) =>
      missingToBlameSwitch(file, view.file, cause, visit.endings.at(-1)?.at ?? openedAt),
  }
  const showsForm = visit.endings.length === 0 || asksForForm || wasOpen
  return (
    <Stack>
      <PageHeader
        above={<a href={`/case?id=${entry.id}`}>The case at {furnace.body.siteLabel}</a>}
        title={showsForm ? 'End the visit' : 'The visit has ended'}
        lead={`Visit of ${sayDate(visit.entry.body.on)}. ${entry.body.complaint}.`}
      />
      <Caution />
      {entry.withdrawn !== undefined && (
        <p>
          This case was withdrawn {momentWords(entry.withdrawn.at)}: {entry.withdrawn.reason}.
        </p>
      )}
      {showsForm && <OpenDangers view={view} visitId={visit.entry.id} />}
      {showsForm ? (
        <EndForm
          key={older?.id ?? 'new'}
          view={view}
          visit={visit}
          facts={facts}
          older={older}
          onSaved={() => setWasOpen(false)}
        />
      ) : (
        <Ended view={view} visit={visit} facts={facts} />
      )}
      <CasePhotos ofCase={view.file} visitId={visit.endings.length === 0 ? visit.entry.id : undefined} />
    </Stack>
  )
}

/** The dangers that bar every way of ending but leaving the furnace off. */
function OpenDangers({ view, visitId }: { view: CaseView; visitId: string }) {
  const { dangers, file } = view
  if (dangers.open.length === 0) return null
  return (
    <section className={styles.danger} aria-labelledby="open-dangers">
      <h2 id="open-dangers">A danger is open</h2>
      <ul>
        {dangers.open.map(({ code, sentence }) => (
          <li key={code}>{sentence}</li>
        ))}
      </ul>
      <p>
        Until it is found to be gone, no ending but leaving the furnace off is finished. Put right? Record
        that <a href={`/case?id=${file.entry.id}#case-danger`}>in the case</a>. Not put right?{' '}
        <a href={shutDownHref(file.furnace.id, file.entry.id, visitId)}>Leave it off: write the notice</a>
      </p>
    </section>
  )
}
