'use client'

import { requirementText } from '@/lib/core/guard/requirement'
import type { SwapFacts } from '@/lib/records/view/swaps/switchSwaps'
import type { FlaggedCase } from '@/lib/records/view/swaps/unjustifiedSwaps'
import { useDeviceState } from '../../device/deviceContext'
import { Facts } from '../../ui/paper/Facts'
import { Sheet } from '../../ui/paper/Sheet'
import { sayDate } from '../../ui/words/sayDate'
import styles from './swaps.module.css'
import { afterwardsWords, complaintWords, readingWords } from './swapWords'

/** A case in which a switch was replaced and something was missing: what, and what happened afterwards. */
export function FlaggedSheet({ flag }: { flag: FlaggedCase }) {
  const { file } = useDeviceState()
  const furnace = file.furnaces.get(flag.furnaceId)
  const { afterwards, almostCertainlyWrong, caseId, swaps } = flag
  return (
    <Sheet
      heading={3}
      title={
        <a href={`/case/history?id=${caseId}`}>{furnace?.body.siteLabel ?? 'A furnace not on this device'}</a>
      }
      sub={furnace?.body.model}
    >
      {almostCertainlyWrong && (
        <p>
          <b>Almost certainly the wrong fix:</b> the reading was too low to close any sound switch. Look for
          what lowers it.
        </p>
      )}
      {swaps.map((swap) => (
        <OneSwap key={swap.repair.id} swap={swap} />
      ))}
      <p>
        <b>Afterwards:</b> {afterwardsWords(afterwards)}{' '}
        {afterwards.became === 'came back' && (
          <a href={`/case/history?id=${afterwards.laterId}`}>The case it came back as</a>
        )}
      </p>
    </Sheet>
  )
}

function OneSwap({ swap }: { swap: SwapFacts }) {
  const { repair, position, complaint, missing, reading, readAfterwards } = swap
  return (
    <div className={styles.swap}>
      <Facts
        facts={[
          {
            key: 'when',
            name: 'Replaced',
            value: (
              <a href={`/record?id=${repair.id}`}>
                {sayDate(repair.body.on)}
                {position !== undefined && `, ${position.body.name}`}
              </a>
            ),
          },
          { key: 'reading', name: 'Reading before it', value: readingWords[reading] },
          {
            key: 'after',
            name: 'Reading after it',
            value: readAfterwards ? 'On record' : 'None at that switch',
          },
        ]}
      />
      {missing.length === 0 ? (
        <p>Nothing was missing for this one.</p>
      ) : (
        <div>
          <p>
            <b>Missing that day</b>, {missing.length} of what is asked for {complaintWords[complaint]}:
          </p>
          <ul className={styles.missing}>
            {missing.map((each) => (
              <li key={each}>{requirementText[each]}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}
