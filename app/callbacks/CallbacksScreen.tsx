'use client'

import { useSearchParams } from 'next/navigation'
import { useCallback, useDeferredValue, useEffect, useMemo, useState } from 'react'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import { figuresOf, switchReplaced } from '@/lib/records/view/callbacks/callbackFigures'
import { gatherFacts, type TeamFacts } from '@/lib/records/view/callbacks/caseFacts'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { Apart } from './Apart'
import { type Asked, askedHref, questionOf, readAsked } from './asked'
import { Busy } from './Busy'
import type { Opening } from './behind'
import { CallbackPlaces } from './CallbackPlaces'
import { Costs } from './Costs'
import { causeWords, remedyWords } from './groupWords'
import { OwnReadings } from './OwnReadings'
import { People } from './People'
import { Question } from './Question'
import { Ranked } from './Ranked'
import { RateByMonth } from './RateByMonth'
import { TimeByCause } from './TimeByCause'
import { TimeToCallback } from './TimeToCallback'
import { useWorked } from './useWorked'

/** Why furnaces come back: every figure is worked out on this device, and opens the cases behind it. */
export function CallbacksScreen() {
  const { file } = useDeviceState()
  const work = useWorked(useCallback(() => gatherFacts(file), [file]))
  return (
    <Stack>
      <PageHeader
        title="Callbacks"
        lead="Why furnaces come back: what was done, what became of it, and how much of that is chance. Every figure opens the cases behind it."
      />
      <CallbackPlaces />
      {!('worked' in work) ? (
        <Busy {...work.progress} />
      ) : work.worked.length === 0 ? (
        <Empty
          what="No case yet"
          why="Callbacks are counted from cases: when a job was done, how it ended, and whether the furnace came back."
          todo={<a href="/cases/new">Open the first case</a>}
        />
      ) : (
        <Figures facts={work.worked} />
      )}
    </Stack>
  )
}

function Figures({ facts }: { facts: TeamFacts }) {
  const { file, me, names } = useDeviceState()
  const query = useSearchParams()
  const [asked, setAsked] = useState(() => readAsked(query))
  const [now] = useState(() => new Date().toISOString())
  const months = useMemo(() => monthsOnFile(facts, now), [facts, now])
  const question = useDeferredValue(useMemo(() => questionOf(asked, months[0], now), [asked, months, now]))
  // The figures depend on what is asked alone, not on which of them is open.
  const questionText = JSON.stringify(question)
  const figures = useMemo(
    () => figuresOf(facts, JSON.parse(questionText), Date.parse(now)),
    [facts, questionText, now],
  )

  // The address keeps all that is chosen, so that reload, back and a shared link lead here again.
  useEffect(() => window.history.replaceState(window.history.state, '', askedHref(asked)), [asked])

  const change = (part: Partial<Asked>) => setAsked((before) => ({ ...before, ...part }))
  const opening: Opening = {
    open: asked.open,
    hrefOf: (key) => askedHref({ ...asked, open: asked.open === key ? '' : key }),
    onOpen: (key) => change({ open: asked.open === key ? '' : key }),
  }
  const section = { figures, file, opening }
  return (
    <>
      <Question {...{ asked, question, months, file, change }} />
      <OwnReadings {...section} />
      <RateByMonth {...section} />
      <TimeToCallback
        {...section}
        name="by-switch"
        title="Time to a callback: switch replaced or not"
        figure={figures.curves.bySwitch}
        groupWords={(key) => (key === switchReplaced ? 'Switch replaced' : 'Switch not replaced')}
        beside="Furnaces whose switch was swapped differ in other ways; this shows what happened, not what the swap caused."
      />
      <TimeToCallback
        {...section}
        name="by-fix"
        title="Time to a callback, by fix"
        figure={figures.curves.byRemedy}
        groupWords={remedyWords}
      />
      <TimeByCause {...section} />
      <Ranked
        {...section}
        name="cause"
        title="Causes"
        sub="Jobs of settled months, by the main cause that was named."
        rowWords="Cause"
        groups={figures.causes}
        groupWords={causeWords}
      />
      <Ranked
        {...section}
        name="fix"
        title="Fixes"
        sub="Jobs of settled months, by what was done."
        rowWords="What was done"
        groups={figures.remedies}
        groupWords={remedyWords}
      />
      <Costs {...section} />
      {me.role === 'manager' && <People {...section} names={names} />}
      <Apart {...section} />
    </>
  )
}

/** Every month from the first case to the present one. */
function monthsOnFile(facts: TeamFacts, now: string): string[] {
  const last = monthNumber(Date.parse(now))
  let first = last
  for (const { cases } of facts)
    for (const { openedAt } of cases) first = Math.min(first, monthNumber(openedAt))
  return Array.from({ length: last - first + 1 }, (_, place) => monthName(first + place))
}
