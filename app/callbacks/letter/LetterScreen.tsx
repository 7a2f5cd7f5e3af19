'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useCallback, useMemo, useState } from 'react'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import type { LetterFigures } from '@/lib/records/view/letter/letterFigures'
import { zoneHere } from '../../cases/history/momentWords'
import { useDeviceState } from '../../device/deviceContext'
import { Button, ButtonLink } from '../../ui/form/Button'
import { Select } from '../../ui/form/Select'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { Busy } from '../Busy'
import { CallbackPlaces } from '../CallbackPlaces'
import { monthWords } from '../monthWords'
import { useWorked } from '../useWorked'
import { LetterPaper } from './LetterPaper'
import styles from './letter.module.css'
import { letterParts } from './letterParts'
import { letterSteps } from './letterSteps'
import { useLogHead } from './useLogHead'

/** As many months as can be chosen. */
const offered = 24

/** The monthly letter: one page to print, to keep and to argue with. */
export function LetterScreen() {
  const { file, me } = useDeviceState()
  const router = useRouter()
  const [now] = useState(() => new Date().toISOString())
  const months = useMemo(() => monthsUntil(now), [now])
  const asked = useSearchParams().get('month')
  // The last whole month, because the present one has not gone by.
  const month = months.find((each) => each === asked) ?? months[1]!
  const work = useWorked(useCallback(() => letterSteps(file, month, now), [file, month, now]))
  return (
    <Stack>
      <div className={styles.aside}>
        <CallbackPlaces />
        <PageHeader
          title="Monthly letter"
          lead="One page: the month’s figures, what changed, what to do, and the hash that the log had."
          actions={
            <>
              <Button onClick={() => window.print()}>Print it</Button>
              {me.role === 'manager' && (
                <ButtonLink href={`/api/letter?month=${month}&ahead=${zoneHere(now)}`} target="_blank">
                  As a PDF
                </ButtonLink>
              )}
            </>
          }
        />
        {me.role !== 'manager' && (
          <Quiet>The PDF is made on the server for a manager. This page prints the same letter.</Quiet>
        )}
        <Select
          label="Month"
          name="month"
          options={months.map((value) => ({ value, words: monthWords(value) }))}
          value={month}
          onChange={(event) => router.replace(`/letter?month=${event.target.value}`)}
        />
      </div>
      {'worked' in work && work.worked.month === month ? (
        <Letter figures={work.worked.figures} now={now} />
      ) : (
        <Busy {...('worked' in work ? { through: 0, of: 1 } : work.progress)} />
      )}
    </Stack>
  )
}

function Letter({ figures, now }: { figures: LetterFigures; now: string }) {
  const { file } = useDeviceState()
  const head = useLogHead()
  const parts = useMemo(() => letterParts(figures, file, { now, head }), [figures, file, now, head])
  return <LetterPaper parts={parts} />
}

function monthsUntil(now: string): string[] {
  const last = monthNumber(Date.parse(now))
  return Array.from({ length: offered }, (_, back) => monthName(last - back))
}
