'use client'

import { useCallback, useState } from 'react'
import { momentWords } from '../../cases/history/momentWords'
import { useDeviceState } from '../../device/deviceContext'
import { Button } from '../../ui/form/Button'
import { Choice } from '../../ui/form/Choice'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { Busy } from '../Busy'
import { CallbackPlaces } from '../CallbackPlaces'
import { useWorked } from '../useWorked'
import { CaseReports } from './CaseReports'
import { RatingReports } from './RatingReports'
import styles from './reports.module.css'
import { type Reports, reportsSteps, type Span } from './reportsSteps'
import { SafetyReport } from './SafetyReport'
import { SeasonReport } from './SeasonReport'
import { SwapReports } from './SwapReports'
import { WarrantyReport } from './WarrantyReport'

const spanOptions: readonly { value: Span; words: string }[] = [
  { value: '12', words: 'Last 12 months' },
  { value: '24', words: 'Last 24 months' },
  { value: 'all', words: 'Everything on record' },
]

/** The reports that are lists and counts, each with its one definition above it. */
export function ReportsScreen() {
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const [span, setSpan] = useState<Span>('12')
  const work = useWorked(useCallback(() => reportsSteps(file, span, now), [file, span, now]))
  return (
    <Stack>
      <CallbackPlaces />
      <PageHeader
        title="Reports"
        lead="Lists and counts from the team’s own records. What each one counts is said above it."
        actions={<Button onClick={() => window.print()}>Print it</Button>}
      />
      <div className={styles.period}>
        <Choice legend="Period" name="span" options={spanOptions} value={span} onChoose={setSpan} />
      </div>
      <p className={styles.periodOnPaper}>
        Period: {spanOptions.find(({ value }) => value === span)!.words.toLowerCase()}, up to{' '}
        {momentWords(now)}.
      </p>
      {'worked' in work ? <All reports={work.worked} now={now} /> : <Busy {...work.progress} />}
    </Stack>
  )
}

function All({ reports, now }: { reports: Reports; now: string }) {
  return (
    <>
      <SafetyReport events={reports.events} />
      <SwapReports swaps={reports.swaps} />
      <CaseReports {...reports} />
      <SeasonReport seasons={reports.seasons} />
      <RatingReports {...reports} now={now} />
      <WarrantyReport warranty={reports.warranty} />
      <Quiet>Months and days are those of UTC. As this device had it {momentWords(now)}.</Quiet>
    </>
  )
}
