'use client'

import { useCallback, useState } from 'react'
import { usualCallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import type { SwapsShown } from '@/lib/records/view/swaps/unjustifiedSwaps'
import { momentWords } from '../../cases/history/momentWords'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { Button } from '../../ui/form/Button'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { Busy } from '../Busy'
import { CallbackPlaces } from '../CallbackPlaces'
import { countOf } from '../countOf'
import { useWorked } from '../useWorked'
import { FlaggedSheet } from './FlaggedSheet'
import { OutsideCases } from './OutsideCases'
import { swapsSteps } from './swapsSteps'
import { UnsuitableSection } from './UnsuitableSection'

/** Switches that were replaced although something was missing, to be looked at together: facts, and nobody's name. */
export function SwapsScreen() {
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const work = useWorked(useCallback(() => swapsSteps(file, usualCallbackWindow, now), [file, now]))
  return (
    <Stack>
      <CallbackPlaces />
      <PageHeader
        title="Switches replaced"
        lead="The switch is the last suspect. Here each replacement is held against what was on record just before it: that day’s readings, that day’s rating, that day’s looks."
        actions={<Button onClick={() => window.print()}>Print it</Button>}
      />
      {'worked' in work ? <Swaps shown={work.worked} now={now} /> : <Busy {...work.progress} />}
    </Stack>
  )
}

function Swaps({ shown, now }: { shown: SwapsShown; now: string }) {
  const { flagged, outsideCases } = shown
  return (
    <>
      <section aria-labelledby="no-reading-justified">
        <Stack>
          <h2 id="no-reading-justified">Swaps that no reading justified</h2>
          <p>{inShort(shown)}</p>
          <Quiet>
            A replacement counts as justified when everything that must be on record for one thing a switch
            can be blamed for was there. What it was blamed for is not recorded, so it is taken from the cause
            that was named. Callbacks are cases on the same furnace about the proving circuit, opened within{' '}
            {usualCallbackWindow.days} days of the end of the job. For talking the work over, not for counting
            people.
          </Quiet>
          {flagged.length === 0 && (
            <Empty
              what={nothingMissing(shown).what}
              why={nothingMissing(shown).why}
              todo="A replacement for which something was missing is listed here."
            />
          )}
          {flagged.map((flag) => (
            <FlaggedSheet key={flag.caseId} flag={flag} />
          ))}
        </Stack>
      </section>
      {outsideCases.length > 0 && <OutsideCases swaps={outsideCases} />}
      <UnsuitableSection now={now} />
      <Quiet>As this device had it {momentWords(now)}.</Quiet>
    </>
  )
}

/** What no flagged case means: nothing was replaced, nothing was judged, or everything was there. */
function nothingMissing({ all, outsideCases }: SwapsShown): { what: string; why: string } {
  if (all.length === 0)
    return {
      what: 'No switch was replaced',
      why: 'No repair on record says that a pressure switch was replaced.',
    }
  const onCases = all.length - outsideCases.length
  if (onCases === 0)
    return {
      what: 'No replacement can be judged',
      why: 'None belongs to a case, so nothing that was read or looked at is on record with it. They are listed below.',
    }
  return {
    what:
      outsideCases.length === 0
        ? 'Every replacement was justified'
        : 'No replacement on a case lacked anything',
    why: 'Each on a case had all on record that must be before a switch may be called faulty.',
  }
}

function inShort({ all, flagged, outsideCases }: SwapsShown): string {
  if (all.length === 0) return 'No replacement of a switch is on record.'
  const wrong = flagged.filter(({ almostCertainlyWrong }) => almostCertainlyWrong).length
  const back = flagged.filter(({ afterwards }) => afterwards.became === 'came back').length
  const outside =
    outsideCases.length === 0
      ? ''
      : `; ${outsideCases.length} ${outsideCases.length === 1 ? 'belongs' : 'belong'} to no case`
  return (
    `${countOf(all.length, 'replacement')} of a switch on record${outside}. ` +
    `Something was missing in ${countOf(flagged.length, 'case')}: in ${wrong} of them the reading was too low to ` +
    `close any sound switch, and ${back} came back.`
  )
}
