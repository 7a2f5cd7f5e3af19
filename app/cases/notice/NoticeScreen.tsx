'use client'

import { useSearchParams } from 'next/navigation'
import { noticeNeeds, noticesOf } from '@/lib/records/view/case/notices'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { Button, ButtonLink } from '../../ui/form/Button'
import { Row, Stack } from '../../ui/paper/Stack'
import { LiftForm } from './LiftForm'
import { NoticePaper } from './NoticePaper'
import styles from './notice.module.css'

/** One shut-down notice as it prints, with what it does not say yet, and the way to lift it. */
export function NoticeScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file } = useDeviceState()
  const entry = file.shutDownNotices.get(id)
  const furnace = entry && file.furnaces.get(file.keptId(entry.body.furnaceId))
  if (entry === undefined || furnace === undefined)
    return (
      <Empty
        page
        what="This notice is not on this device"
        why="The address may be cut short, or the notice has not reached this device. That is no permission to light the furnace."
        todo={<a href="/">Find the furnace by site, model or serial</a>}
      />
    )
  const counted = noticesOf(file, furnace.id).find((notice) => notice.entry.id === id)
  const { caseId } = entry.body
  const others = noticesOf(file, furnace.id).filter(
    (notice) => notice.lifting === undefined && notice.entry.id !== id,
  )
  const stands = counted !== undefined && counted.lifting === undefined
  const unsaid = noticeNeeds(entry.body)
  const again = new URLSearchParams({
    furnace: furnace.id,
    ...(caseId === undefined ? {} : { case: caseId }),
    again: id,
  })

  return (
    <Stack>
      <NoticePaper notice={counted ?? { entry, lifting: undefined }} furnace={furnace} file={file} />
      <div className={styles.screenOnly}>
        <Stack>
          <Row>
            <Button onClick={() => window.print()}>Print it</Button>
            <ButtonLink href={`/furnace?id=${furnace.id}`}>The furnace</ButtonLink>
            {caseId !== undefined && <ButtonLink href={`/case?id=${caseId}`}>The case</ButtonLink>}
            <ButtonLink kind="quiet" href={`/record?id=${id}`}>
              The record itself
            </ButtonLink>
          </Row>
          {others.length > 0 && (
            <p>
              Another notice stands for this furnace and has to be lifted as well:{' '}
              <a href={`/notice?id=${others[0]!.entry.id}`}>{others[0]!.entry.body.found}</a>
            </p>
          )}
          {stands && unsaid.length > 0 && (
            <section aria-label="Not said yet">
              <p>
                <b>This notice does not say yet:</b>
              </p>
              <ul>
                {unsaid.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              <p>
                <a href={`/case/shut-down?${again}`}>Write it anew with what is missing</a>. The older one
                stays readable.
              </p>
            </section>
          )}
          {stands && <LiftForm notice={entry} />}
          {counted?.lifting !== undefined && caseId !== undefined && (
            <p>
              The repair is proven by readings taken now.{' '}
              <a href={`/case?id=${caseId}`}>Begin a visit on the case</a>
            </p>
          )}
        </Stack>
      </div>
    </Stack>
  )
}
