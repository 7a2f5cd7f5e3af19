'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { goneSince } from '@/lib/records/view/unsuitable'
import { useDeviceState } from '../device/deviceContext'
import { FoundHere } from './FoundHere'
import styles from './setpointCard.module.css'

/** What was found at this position in other furnaces of the range: one line, so that the number stays in sight. */
export function FoundElsewhere({ found }: { found: readonly Entry<FoundFittedBody>[] }) {
  const { file } = useDeviceState()
  if (found.length === 0) return null
  const still = found.filter((each) => goneSince(file, each) === undefined).length
  return (
    <details className={styles.found}>
      <summary>
        An unsuitable switch was found {found.length === 1 ? 'once' : `${found.length} times`} at this
        position, in {found.length === 1 ? 'a furnace' : 'furnaces'} of this range;{' '}
        {still === 0
          ? 'put right since'
          : still === found.length
            ? 'not put right yet'
            : `${still} not put right yet`}
      </summary>
      {found.map((each) => (
        <FoundHere key={each.id} found={each} />
      ))}
    </details>
  )
}
