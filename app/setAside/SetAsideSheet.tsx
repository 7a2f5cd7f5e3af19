'use client'

import { useState } from 'react'
import type { SetAside } from '@/lib/device/managing'
import { bodyFacts } from '../record/bodyFacts'
import { recordTitle } from '../record/recordTitle'
import type { About } from '../record/shown'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { TextField } from '../ui/form/TextField'
import { Facts } from '../ui/paper/Facts'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { sayMoment } from '../ui/words/sayDate'
import styles from './setAside.module.css'

type Props = {
  item: SetAside
  about: About
  /** Why the log did not take it, if it was tried. */
  why: string | undefined
  admit(ids: readonly string[]): Promise<void>
  refuse(id: string, reason: string): Promise<void>
}

/** One record that was set aside, whole, with who said it when, and what a manager can do with it. */
export function SetAsideSheet({ item, about, why, admit, refuse }: Props) {
  const { record, personId, receivedAt, refused, pictureLost } = item
  const { kind, body, saidAt } = record
  const name = about.names.get(personId) ?? 'somebody'
  return (
    <div id={record.id}>
      <Sheet
        title={
          kind !== undefined && body !== undefined ? recordTitle(kind, body) : 'A record that cannot be read'
        }
        sub={`${name}${saidAt === undefined ? '' : `, ${sayMoment(saidAt)} by that device’s clock`}; handed over ${sayMoment(receivedAt)}`}
        foot={<Decide id={record.id} isRefused={refused !== undefined} {...{ admit, refuse }} />}
      >
        <Stack>
          <Problem>{why}</Problem>
          {refused !== undefined && (
            <p>
              <b>Kept out of the log</b> by {about.names.get(refused.by) ?? 'a manager'} on{' '}
              {sayMoment(refused.at)}: {refused.reason}
            </p>
          )}
          {pictureLost && (
            <p>
              <b>Its picture is lost.</b> It was damaged on that device and could not be handed over. The
              record can be admitted without it.
            </p>
          )}
          {kind === 'photo' && !pictureLost && typeof body?.sha256 === 'string' && (
            // Not in the team's file: the server shows it to managers alone.
            <img
              className={styles.picture}
              src={`/api/set-aside/pictures/${body.sha256}`}
              alt="What was set aside to be looked at"
            />
          )}
          {kind !== undefined && body !== undefined && <Facts facts={bodyFacts(kind, body, about)} />}
        </Stack>
      </Sheet>
    </div>
  )
}

type DecideProps = Pick<Props, 'admit' | 'refuse'> & { id: string; isRefused: boolean }

function Decide({ id, isRefused, admit, refuse }: DecideProps) {
  const [refusing, setRefusing] = useState(false)
  const [reason, setReason] = useState('')
  const [error, setError] = useState<string>()
  if (refusing)
    return (
      <Stack>
        <TextField
          label="Why it stays out of the log"
          name={`reason-${id}`}
          value={reason}
          error={error}
          onChange={(event) => setReason(event.target.value)}
        />
        <Row>
          <Button
            kind="main"
            onClick={() =>
              reason.trim() === '' ? setError('Say why it stays out of the log.') : void refuse(id, reason)
            }
          >
            Keep it out
          </Button>
          <Button kind="quiet" onClick={() => setRefusing(false)}>
            Leave it undecided
          </Button>
        </Row>
      </Stack>
    )
  return (
    <Row>
      <Button onClick={() => void admit([id])}>Admit it to the log</Button>
      {!isRefused && (
        <Button kind="quiet" onClick={() => setRefusing(true)}>
          Keep it out
        </Button>
      )}
    </Row>
  )
}
