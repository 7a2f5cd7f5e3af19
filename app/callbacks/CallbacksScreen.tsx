'use client'

import { useCallback } from 'react'
import { gatherFacts } from '@/lib/records/view/callbacks/caseFacts'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { Busy } from './Busy'
import { CallbackPlaces } from './CallbackPlaces'
import { Figures } from './Figures'
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
