import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import { figuresOf, switchReplaced } from '@/lib/records/view/callbacks/callbackFigures'
import type { TeamFacts } from '@/lib/records/view/callbacks/caseFacts'
import { useDeviceState } from '../device/deviceContext'
import { Apart } from './Apart'
import { type Asked, askedHref, questionOf, readAsked } from './asked'
import type { Opening } from './behind'
import { Costs } from './Costs'
import { causeWords, remedyWords } from './groupWords'
import { OwnReadings } from './OwnReadings'
import { People } from './People'
import { Question } from './Question'
import { Ranked } from './Ranked'
import { RateByMonth } from './RateByMonth'
import { TimeByCause } from './TimeByCause'
import { TimeToCallback } from './TimeToCallback'

/** What is asked, and everything that is worked out from the facts for it. */
export function Figures({ facts }: { facts: TeamFacts }) {
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
  let firstOpenedAt = Date.parse(now)
  for (const { cases } of facts)
    for (const { openedAt } of cases) firstOpenedAt = Math.min(firstOpenedAt, openedAt)
  const first = monthNumber(firstOpenedAt)
  return Array.from({ length: last - first + 1 }, (_, place) => monthName(first + place))
}
