'use client'

import { useDeviceState } from '../device/deviceContext'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import styles from './oldList.module.css'
import type { Confirmed as Done } from './useImport'
import { rowsWords } from './verdictWords'

/** Step 5: how far the records are on their way, and how all of them are taken back. */
export function Confirmed({ importId, rows, records }: Done) {
  const { waiting, refused } = useDeviceState()
  const sent = Math.max(0, records - waiting.length)
  return (
    <Sheet
      title="Taken over"
      sub={`${rowsWords(rows)}, as ${records} records.`}
      foot={<ButtonLink href={`/withdraw?record=${importId}`}>Undo: withdraw this import</ButtonLink>}
    >
      <Stack>
        {waiting.length > 0 ? (
          <p role="status">
            {sent} of {records} are in the team’s log. The others wait on this device and are sent by
            themselves, also after a break.
            <progress className={styles.progress} aria-label="How many are sent" value={sent} max={records} />
          </p>
        ) : (
          <p role="status">All of them are in the team’s log.</p>
        )}
        {refused.length > 0 && (
          <p>
            {refused.length} were refused. <a href="/waiting">See which, and why</a>
          </p>
        )}
        <p>One withdrawal takes all of it back. What others have built on since stays.</p>
      </Stack>
    </Sheet>
  )
}
