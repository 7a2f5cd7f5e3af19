'use client'

import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { useAdd } from '../../device/useAdd'
import { dayOf } from '../../equipment/form/today'
import { Problem } from '../../ui/answers/Problem'
import { Button } from '../../ui/form/Button'

type Props = { ofCase: CaseFile; file: TeamFile }

/** Offers the readings that prove a repair as what to expect of this furnace from now on. */
export function KeepAsBaseline({ ofCase, file }: Props) {
  const { add, trouble } = useAdd()
  const proving = provingReadings(ofCase)
  const kept = new Set(counting(file.baselines).map(({ body }) => body.readingId))
  const open = proving.filter(({ id }) => !kept.has(id))
  if (proving.length === 0) return null
  if (open.length === 0)
    return (
      <p role="status">
        Its hot readings are the furnace’s baseline now: later readings are held against them.
      </p>
    )
  return (
    <div>
      <p>
        This furnace is healthy now. Its hot readings can tell the next person what to expect of it:{' '}
        {open.map(({ body }) => `${body.asTyped}, ${body.stage}`).join('; ')}.
      </p>
      <Button
        onClick={() =>
          void add(
            open.map(({ id }) => ({
              kind: 'baseline',
              body: {
                furnaceId: ofCase.furnace.id,
                readingId: id,
                occasion: 'after a proven repair',
                on: dayOf(new Date()),
              },
            })),
          )
        }
      >
        Keep them as its baseline
      </Button>
      {trouble?.refusal && <Problem>{trouble.refusal.sentence}</Problem>}
    </div>
  )
}

/** The newest hot reading after the repair at each switch, in service. */
function provingReadings({ readings }: CaseFile): Entry<ReadingBody>[] {
  const newest = new Map<string, Entry<ReadingBody>>()
  for (const reading of readings) {
    const { positionId, when, phase, situation } = reading.body
    if (
      positionId !== undefined &&
      when === 'after repair' &&
      phase === 'steady hot' &&
      situation === 'as found'
    )
      newest.set(positionId, reading)
  }
  return [...newest.values()]
}
