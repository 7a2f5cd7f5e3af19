import { memo } from 'react'
import type { Match } from '@/lib/core/find'
import type { RatingSettings, RatingStanding } from '@/lib/core/rating'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FindEntry } from '@/lib/records/view/findEntries'
import { type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { behind, newestDate } from '../setpoint/sourceLines'
import { LevelWord } from '../ui/words/LevelWord'
import { Quiet } from '../ui/words/Quiet'
import styles from './find.module.css'
import { marked } from './marked'

type Props = { entry: FindEntry; match: Match; file: TeamFile; settings: RatingSettings }

/**
 * One line of the results. It names a standing but no number: the number comes with its sources, on its card. It is
 * worked out once for a file: a list of thousands that is being sent changes what waits many times a second.
 */
export const FindResult = memo(function FindResult({ entry, match, file, settings }: Props) {
  const text = entry.texts[match.text] ?? ''
  const found = (
    <span className={styles.matched} translate="no">
      {marked(text, match.matched).map((piece) =>
        piece.found ? <mark key={piece.at}>{piece.text}</mark> : <span key={piece.at}>{piece.text}</span>,
      )}
    </span>
  )
  if (entry.target.kind === 'furnace') {
    const furnace = file.furnaces.get(entry.target.id)
    if (furnace === undefined) return null
    return (
      <a className={styles.result} href={`/furnace?id=${furnace.id}`}>
        <span className={styles.title}>{furnace.body.siteLabel}</span>
        <span>Furnace {furnace.body.model}</span>
        {found}
      </a>
    )
  }
  if (entry.target.kind === 'part') {
    const part = file.parts.get(entry.target.id)
    if (part === undefined) return null
    return (
      <a className={styles.result} href={`/record?id=${part.id}`}>
        {found}
        <span>
          {part.body.class === 'general-purpose'
            ? 'A general-purpose or adjustable switch: never a repair, and its label is no furnace’s rating.'
            : 'A part of no recorded switch position.'}
        </span>
      </a>
    )
  }
  const setpoint = setpointOf(file, entry.target.id, {}, settings)
  if (setpoint === undefined) return null
  return (
    <a className={styles.result} href={`/setpoint?position=${entry.target.id}`}>
      <span className={styles.title}>
        {setpoint.position.body.name}, {setpoint.maker?.body.name} {setpoint.range.body.name}
      </span>
      {found}
      <span className={styles.levels}>
        <span>
          Closes: <Standing standing={setpoint.rating.closes} setpoint={setpoint} />
        </span>
        <span>
          Opens: <Standing standing={setpoint.rating.opens} setpoint={setpoint} />
        </span>
      </span>
      {setpoint.rating.asks.length > 0 && (
        <Quiet inline>Depends on the {setpoint.rating.asks.join(' and ')}.</Quiet>
      )}
    </a>
  )
})

function Standing({ standing, setpoint }: { standing: RatingStanding; setpoint: Setpoint }) {
  return standing.level === 'Not on file' ? (
    <LevelWord level="Not on file" />
  ) : (
    <LevelWord level={standing.level} asOf={newestDate(behind(standing), setpoint.reports)} />
  )
}
