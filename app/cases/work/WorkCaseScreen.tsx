'use client'

import { endingsDisagree } from '@/lib/records/view/case/caseStanding'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { useDeviceState } from '../../device/deviceContext'
import { CasePhotos } from '../../photo/CasePhotos'
import { Empty } from '../../ui/answers/Empty'
import { Problem } from '../../ui/answers/Problem'
import { Caution } from '../../ui/danger/Caution'
import { SideBySide, Stack } from '../../ui/paper/Stack'
import { shutDownHref } from '../end/StillMissing'
import { BeginVisit } from './BeginVisit'
import { CaseHead } from './CaseHead'
import { CombustionTests } from './CombustionTests'
import { DangerPanel } from './DangerPanel'
import { Findings } from './Findings'
import { LookNext } from './LookNext'
import { openVisit } from './openVisit'
import { Ranking } from './Ranking'
import { Readings } from './Readings'
import { SwitchLast } from './SwitchLast'
import { useCase } from './useCase'
import { type CaseWork, useCaseWork } from './useCaseWork'
import { useRanking } from './useRanking'
import styles from './work.module.css'

/** Works a case: dangers first, then the quick looks, then measuring; the causes rank themselves at every tap. */
export function WorkCaseScreen() {
  const { view, now } = useCase()
  if (view === undefined)
    return (
      <Empty
        page
        what="This case is not on this device"
        why="The address may be cut short, or the case was recorded elsewhere and has not reached this device."
        todo={<a href="/cases">All cases</a>}
      />
    )
  return <WorkCase view={view} now={now} />
}

/** Where the parts of the page are, for a thumb. */
const places = [
  ['look', 'Look'],
  ['causes', 'Causes'],
  ['readings', 'Measure'],
  ['combustion', 'CO'],
  ['photos', 'Photos'],
  ['switch', 'Switch'],
] as const

function WorkCase({ view, now }: { view: CaseView; now: string }) {
  const { file, names } = useDeviceState()
  const visitId = openVisit(view)
  const work = useCaseWork(view, visitId)
  const { entry, furnace, visits } = view.file
  const newest = visits.at(-1)
  const leftOffBare = view.file.leftOffUnnoticed.findLast(({ body }) => body.caseId === entry.id)
  return (
    <Stack>
      <CaseHead {...{ view, file, names, now, visitId }} />
      <Caution />
      <DangerPanel dangers={view.dangers} caseId={entry.id} furnaceId={furnace.id} visitId={visitId} />
      {newest !== undefined && endingsDisagree(newest) && (
        <Problem>
          Two people ended this visit, and what they recorded differs or stands twice.{' '}
          <a href={`/case/end?id=${entry.id}&visit=${newest.entry.id}`}>Look at both, and withdraw one.</a>
        </Problem>
      )}
      {view.missing.length > 0 && (
        <section aria-label="The ending is not finished">
          <p>The last ending is kept as not finished. It lacks:</p>
          <ul>
            {view.missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          {leftOffBare !== undefined && (
            <a href={shutDownHref(furnace.id, entry.id, leftOffBare.body.visitId)}>
              Write the shut-down notice
            </a>
          )}
        </section>
      )}
      {visitId === undefined && entry.withdrawn === undefined && <BeginVisit caseId={entry.id} />}
      {work.trouble?.refusal && <Problem>{work.trouble.refusal.sentence}</Problem>}
      <nav aria-label="On this page" className={styles.places}>
        {places.map(([id, words]) => (
          <a key={id} href={`#${id}`}>
            {words}
          </a>
        ))}
      </nav>
      {view.dangers.unanswered.length === 0 ? (
        <RankedWork {...{ view, now, work }} mayAdd={visitId !== undefined} />
      ) : (
        <div id="look">
          <Findings view={view} work={work} mayAdd={visitId !== undefined} />
        </div>
      )}
      <div id="readings">
        <Readings {...{ view, file, now, visitId }} />
      </div>
      <div id="combustion">
        <CombustionTests view={view} visitId={visitId} />
      </div>
      <div id="photos">
        <CasePhotos ofCase={view.file} visitId={visitId} />
      </div>
      {view.dangers.unanswered.length === 0 && (
        <div id="switch">
          <SwitchLast {...{ view, file, now, visitId }} />
        </div>
      )}
    </Stack>
  )
}

type RankedProps = { view: CaseView; now: string; work: CaseWork; mayAdd: boolean }

function RankedWork({ view, now, work, mayAdd }: RankedProps) {
  const { file } = useDeviceState()
  const ranking = useRanking(file, view, now)
  return (
    <SideBySide>
      <div id="look">
        <Stack>
          <LookNext planned={ranking.planned} {...{ view, work, mayAdd }} />
          <Findings {...{ view, work, mayAdd }} />
        </Stack>
      </div>
      <div id="causes">
        <Ranking ranking={ranking} file={file} />
      </div>
    </SideBySide>
  )
}
