'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { goneSince } from '@/lib/records/view/unsuitable'
import { useDeviceState } from '../device/deviceContext'
import { SinceFound } from '../foundFitted/SinceFound'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'
import styles from './setpointCard.module.css'

/** A switch that was found at this position although it should not be, in which furnace, and what became of it. */
export function FoundHere({ found }: { found: Entry<FoundFittedBody> }) {
  const { file } = useDeviceState()
  const { furnaceId, foundOn, what, printed } = found.body
  const furnace = furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(furnaceId))
  return (
    <div className={styles.found}>
      <p>
        <b>Found fitted {sayDate(foundOn)}</b>{' '}
        {furnace === undefined ? (
          'in a furnace that was not named'
        ) : (
          <>
            at <a href={`/furnace?id=${furnace.id}`}>{furnace.body.siteLabel}</a>
          </>
        )}
        : {what}, printed <AsPrinted text={printed} />.
        {goneSince(file, found) === undefined &&
          ' That furnace is not proven safe until the factory part is back.'}{' '}
        <a href={`/record?id=${found.id}`}>The record</a>
      </p>
      <SinceFound {...{ found, file }} />
    </div>
  )
}
