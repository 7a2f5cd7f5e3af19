'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { momentWords } from '../../cases/history/momentWords'
import { useDeviceState } from '../../device/deviceContext'
import { Button } from '../../ui/form/Button'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { Busy } from '../Busy'
import { CallbackPlaces } from '../CallbackPlaces'
import { useWorked } from '../useWorked'
import { AtAGlance } from './AtAGlance'
import { leftUndoneSteps } from './leftUndoneSteps'
import { UndoneSection } from './UndoneSection'
import { undoneLists } from './undoneLists'

/** Everything that waits for somebody, what can hurt people first. */
export function LeftUndoneScreen() {
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const work = useWorked(useCallback(() => leftUndoneSteps(file, now), [file, now]))
  return (
    <Stack>
      <CallbackPlaces />
      <PageHeader
        title="Left undone"
        lead="What waits for somebody: what can hurt people first, then what comes back, then the numbers that work rests on."
        actions={<Button onClick={() => window.print()}>Print it</Button>}
      />
      {'worked' in work ? <Lists undone={work.worked} now={now} /> : <Busy {...work.progress} />}
    </Stack>
  )
}

function Lists({ undone, now }: { undone: LeftUndone; now: string }) {
  const { file } = useDeviceState()
  const lists = useMemo(() => undoneLists(undone, file), [undone, file])
  // An address that names a list was opened before the list was there.
  useEffect(() => document.getElementById(window.location.hash.slice(1))?.scrollIntoView(), [])
  return (
    <>
      <AtAGlance lists={lists} />
      {lists.map((list) => (
        <UndoneSection key={list.key} list={list} now={now} />
      ))}
      <Quiet>As this device had it {momentWords(now)}.</Quiet>
    </>
  )
}
