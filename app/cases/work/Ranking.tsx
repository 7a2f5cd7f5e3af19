'use client'

import { useState } from 'react'
import type { RankedCause } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { Button } from '../../ui/form/Button'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { CauseRow } from './CauseRow'
import { SimilarCases } from './SimilarCases'
import type { Ranking as Ranked } from './useRanking'
import styles from './work.module.css'

/** Causes listed before the rest is asked for. */
const first = 5

/** Which causes are likely by what is known so far, why, and which past cases say so. */
export function Ranking({ ranking, file }: { ranking: Ranked; file: TeamFile }) {
  const [all, setAll] = useState(false)
  const { ranked, similar, casesOnFile } = ranking
  const shown = all ? ranked : ranked.filter((cause, place) => place < first || staysInSight(cause))
  return (
    <Sheet
      title="Likely causes"
      sub="What your findings say so far. It orders the looking; it proves nothing."
    >
      <Stack>
        <Quiet>
          {casesOnFile === 0
            ? 'Ranked by the trade’s experience alone: your team has no case with a cause on file yet.'
            : `Ranked by the trade’s experience and ${casesOnFile === 1 ? 'one case' : `${casesOnFile} cases`} of your team.`}{' '}
          <a href="/helper">How good is this helper?</a>
        </Quiet>
        <SimilarCases similar={similar} file={file} />
        <ol className={styles.causes}>
          {shown.map((cause) => (
            <CauseRow key={cause.cause} ranked={cause} file={file} />
          ))}
        </ol>
        <Button kind="quiet" onClick={() => setAll(!all)} aria-expanded={all}>
          {all ? 'Show fewer' : `Show all ${ranked.length}`}
        </Button>
      </Stack>
    </Sheet>
  )
}

/** A rare dangerous cause is never scrolled away, once something speaks for it. */
const staysInSight = ({ danger, forIt }: RankedCause): boolean => danger && forIt.length > 0
