'use client'

import type { ReactNode } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import type { Notice } from '@/lib/records/view/case/notices'
import { useDeviceState } from '../../device/deviceContext'
import { Facts } from '../../ui/paper/Facts'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { momentWords } from '../history/momentWords'
import styles from './notice.module.css'
import { authorityWords, stateWords } from './noticeWords'

type Props = { notice: Notice; furnace: Entry<FurnaceBody>; file: TeamFile }

const unsaid = 'not recorded'

/** The notice as it hangs at the furnace: one page, readable from a step away, with who lifted it once somebody did. */
export function NoticePaper({ notice: { entry, lifting }, furnace, file }: Props) {
  const { names } = useDeviceState()
  const { body, withdrawn } = entry
  const who = (person: string) => names.get(person) ?? 'somebody whose name is not on this device'
  const licence = licenceOf(file, entry)
  return (
    <article className={styles.paper} aria-labelledby="notice-title">
      <header className={styles.head}>
        <h1 id="notice-title">
          {withdrawn !== undefined ? 'Withdrawn' : lifting === undefined ? 'Left off' : 'Lifted'}
        </h1>
        {withdrawn !== undefined ? (
          <p className={styles.until}>
            This notice was withdrawn {momentWords(withdrawn.at)}, by {who(withdrawn.by)}: {withdrawn.reason}{' '}
            {withdrawn.replacedBy !== undefined && (
              <a href={`/notice?id=${withdrawn.replacedBy}`}>The notice that takes its place</a>
            )}
          </p>
        ) : (
          <p className={styles.until}>
            {lifting !== undefined && 'It said: '}Do not relight until {body.doNotRelightUntil}
          </p>
        )}
      </header>
      {lifting !== undefined && (
        <section aria-label="Lifted" className={styles.lifted}>
          <p>
            <b>
              Lifted {sayDate(lifting.body.on)} by {who(lifting.by)}
              {lifting.body.licence !== undefined && `, licence ${lifting.body.licence}`}.
            </b>{' '}
            Put right: {lifting.body.because} Recorded {momentWords(lifting.at)}.{' '}
            <a href={`/record?id=${lifting.id}`}>The record</a>
          </p>
        </section>
      )}
      <Facts
        facts={[
          { key: 'site', name: 'Furnace at', value: furnace.body.siteLabel },
          { key: 'model', name: 'Model', value: <AsPrinted text={furnace.body.model} /> },
          {
            key: 'serial',
            name: 'Serial',
            value: furnace.body.serial === undefined ? unsaid : <AsPrinted text={furnace.body.serial} />,
          },
        ]}
      />
      <Part title="What was found">{body.found}</Part>
      <Facts
        facts={[
          { key: 'gas', name: 'Gas', value: stateWords[body.gas] },
          { key: 'power', name: 'Power', value: stateWords[body.power] },
          { key: 'tag', name: 'Tag on the furnace', value: body.tagged ? 'Yes' : 'No' },
          {
            key: 'told',
            name: 'Told',
            value: `${body.told ?? unsaid}${body.toldAt === undefined ? ', when: not recorded' : `, ${momentWords(body.toldAt)}`}`,
          },
          { key: 'written', name: 'Written notice left', value: body.writtenNotice ? 'Yes' : 'No' },
          {
            key: 'authority',
            name: 'Authority or gas supplier',
            value:
              body.authority === undefined
                ? unsaid
                : `${authorityWords[body.authority]}${body.authorityWho === undefined ? '' : `: ${body.authorityWho}`}`,
          },
          { key: 'heat', name: 'Heat and frost meanwhile', value: body.heatAndFrost ?? unsaid },
          ...(body.note === undefined ? [] : [{ key: 'note', name: 'Note', value: body.note }]),
        ]}
      />
      <p>
        Left off on {sayDate(body.on)}. Recorded {momentWords(entry.at)}, by {who(entry.by)}
        {licence !== undefined && `, licence ${licence}`}.
        {entry.waiting && ' On this device only until it is sent.'}
      </p>
      <p className={styles.defers}>
        Lighting it, and judging that it may be lit, is the work of a person who is qualified and, where the
        law asks for it, licensed. The maker’s instructions and local codes come before anything written here.
        You smell gas, a CO alarm sounds, or anyone is unwell: everybody out, then call from outside.
      </p>
      <p className={styles.received}>
        <span>Received by</span>
        <span>On</span>
      </p>
    </article>
  )
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section>
      <h2>{title}</h2>
      <p className={styles.found}>{children}</p>
    </section>
  )
}

/** The licence under which the visit stood in which the notice was written, where one was recorded. */
function licenceOf(file: TeamFile, { body, at, by }: Entry<ShutDownNoticeBody>): string | undefined {
  if (body.caseId === undefined) return undefined
  return counting(file.visits)
    .filter((visit) => visit.body.caseId === body.caseId && visit.at <= at && visit.by === by)
    .toSorted((one, other) => (one.at < other.at ? -1 : 1))
    .at(-1)?.body.licence
}
