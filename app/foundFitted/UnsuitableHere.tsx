import { useMemo } from 'react'
import { dangerSentence } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { unsuitableStill } from '@/lib/records/view/swaps/unsuitableStill'
import { AsPrinted } from '../ui/words/AsPrinted'
import { FittedWarning } from './FittedWarning'
import { notProvenSafe } from './fittedWords'
import styles from './foundFitted.module.css'

type Props = { furnaceId: string; file: TeamFile; but?: readonly string[] }

/**
 * Every switch that sits in this furnace and should not, at whatever position, also at one that nobody knows, and
 * every number read off a switch that is a general-purpose one's.
 * @param but records that the screen shows anyhow
 */
export function UnsuitableHere({ furnaceId, file, but = [] }: Props) {
  const still = useMemo(() => unsuitableStill(file), [file])
  const here = still.filter(({ id, furnace }) => furnace?.id === file.keptId(furnaceId) && !but.includes(id))
  return here.map(({ id, positionId, printed, dangers }) => {
    const found = file.foundFitted.get(id)
    if (found !== undefined) return <FittedWarning key={id} found={found} file={file} />
    const position = positionId === undefined ? undefined : file.positions.get(positionId)
    return (
      <div key={id} className={styles.danger}>
        <p>
          <b>
            Read off the switch that is fitted{position !== undefined && `, ${position.body.name}`}:{' '}
            <AsPrinted text={printed} />
          </b>
          . <a href={`/record?id=${id}`}>The record</a>
        </p>
        {dangers.map((code) => (
          <p key={code}>{dangerSentence[code]}</p>
        ))}
        <p>{notProvenSafe}</p>
      </div>
    )
  })
}
