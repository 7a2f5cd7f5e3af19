'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { CaseFile, VisitFile } from '@/lib/records/view/case/caseFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import type { EndingFacts } from '@/lib/records/view/case/endingNeeds'
import { endingNeedsByPlace } from '@/lib/records/view/case/endingNeeds'
import { noticeOfEnding } from '@/lib/records/view/case/leftOff'
import { useDeviceState } from '../../device/deviceContext'
import { ButtonLink } from '../../ui/form/Button'
import { Row, SideBySide, Stack } from '../../ui/paper/Stack'
import { missingThen } from '../history/missingThen'
import { EndingSheet } from './EndingSheet'
import { KeepAsBaseline } from './KeepAsBaseline'
import { shutDownHref } from './StillMissing'

type Props = { view: CaseView; visit: VisitFile; facts: EndingFacts }

/** A visit that has ended: as what, what that lacks, and how to go on. Two endings stand side by side to be settled. */
export function Ended({ view, visit, facts }: Props) {
  const { file, names } = useDeviceState()
  const { entry, visits, furnace } = view.file
  const { endings } = visit
  const here = `/case/end?id=${entry.id}&visit=${visit.entry.id}`
  if (endings.length > 1)
    return (
      <Stack>
        <div role="alert">
          <p>
            <b>{endings.length} endings of this visit stand, and they have to be settled.</b>
          </p>
          <p>
            Until then it counts in no figure. Talk to each other, and withdraw all but one, with the reason.
            What is withdrawn stays readable.
          </p>
        </div>
        <SideBySide>
          {endings.map((ending) => (
            <EndingSheet
              key={ending.id}
              entry={ending}
              file={file}
              names={names}
              finished={missingThen(file, view.file, ending).length === 0}
            />
          ))}
        </SideBySide>
      </Stack>
    )
  const ending = endings[0]!
  const { how, noticeId } = ending.body
  const isNewest = visits.at(-1)?.entry.id === visit.entry.id
  const missing = isNewest
    ? endingNeedsByPlace(ending.body, { ...facts, endedAt: ending.at }).map(({ sentence }) => sentence)
    : missingThen(file, view.file, ending)
  const hasNoNotice = how === 'left off' && !hasNotice(view.file, visit, ending)
  return (
    <Stack>
      {missing.length === 0 ? (
        <p role="status">
          <b>Kept as finished.</b> {nextWords[how]}
        </p>
      ) : (
        <div role="status">
          <p>
            <b>Kept as not finished. Missing:</b>
          </p>
          <ul>
            {missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p>
            What this ending itself does not say can be written anew. Readings, CO tests and repairs belong to
            a visit that goes on: begin a new visit on the case, or withdraw this ending and go on with this
            one.
          </p>
        </div>
      )}
      {how === 'repaired and proven' && missing.length === 0 && (
        <KeepAsBaseline ofCase={view.file} file={file} />
      )}
      <EndingSheet
        entry={ending}
        file={file}
        names={names}
        finished={missing.length === 0}
        actions={<ButtonLink href={`${here}&again=${ending.id}`}>Write it anew</ButtonLink>}
      />
      <Row>
        {hasNoNotice && (
          <ButtonLink kind="main" href={shutDownHref(furnace.id, entry.id, visit.entry.id)}>
            Write the shut-down notice
          </ButtonLink>
        )}
        {noticeId !== undefined && (
          <ButtonLink kind="main" href={`/notice?id=${noticeId}`}>
            The shut-down notice, to print
          </ButtonLink>
        )}
        <ButtonLink href={`/case?id=${entry.id}`}>The case</ButtonLink>
        <ButtonLink href={`/case/history?id=${entry.id}`}>Its history, to read or print</ButtonLink>
        <ButtonLink kind="quiet" href={`/furnace?id=${furnace.id}`}>
          The furnace
        </ButtonLink>
        <ButtonLink kind="quiet" href={`${here}&own=1`}>
          You saw it end otherwise? Record yours beside it
        </ButtonLink>
      </Row>
    </Stack>
  )
}

const hasNotice = ({ notices }: CaseFile, visit: VisitFile, { at, body }: Entry<EndingBody>): boolean =>
  noticeOfEnding(notices, { noticeId: body.noticeId, visitAt: visit.entry.at, endedAt: at }) !== undefined

const nextWords = {
  'repaired and proven': 'It counts as a fix. Its cause is called durable once the furnace has stayed quiet.',
  'repaired, not proven': 'The case stays open until readings prove the repair.',
  'waiting for part': 'The case stays open until the part is in.',
  'no fault found': 'It counts as no fix.',
  'repair declined': 'It counts as no fix.',
  'left off': 'The furnace stays off until its notice is lifted.',
} as const
