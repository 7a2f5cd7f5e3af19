import type { PartLink } from '@/lib/records/view/partChain'
import { sayDate } from '../ui/words/sayDate'
import styles from './setpointCard.module.css'

/** The factory part numbers of a position, each through its supersessions, the current one first. */
export function PartLines({ lines }: { lines: readonly PartLink[][] }) {
  if (lines.length === 0) {
    return <p>No factory part number is on file for this position.</p>
  }
  return (
    <ul className={styles.parts}>
      {lines.map((line) => {
        const current = line.at(-1)!
        return (
          <li key={current.part.id}>
            <b translate="no">{current.part.body.partNumber}</b>
            <span>, listed in {current.part.body.listedIn}</span>
            {line
              .slice(1)
              .toReversed()
              .map((link, index) => (
                <p key={link.part.id}>{supersessionWords(link, line[line.length - 2 - index]!)}</p>
              ))}
          </li>
        )
      })}
    </ul>
  )
}

const settingWords = {
  same: 'the maker states the same setting',
  changed: 'the maker states a changed setting: its rating is its own',
  'not stated': 'whether the setting changed is not stated: the rating is not carried over',
} as const

const supersessionWords = ({ part, supersededBy }: PartLink, older: PartLink): string =>
  `${part.body.partNumber} replaces ${older.part.body.partNumber}` +
  (supersededBy === undefined
    ? ''
    : `${supersededBy.body.kit ? ', as a kit' : ''}; ${settingWords[supersededBy.body.setting]} (${supersededBy.body.statedIn}${
        supersededBy.body.on === undefined ? '' : `, ${sayDate(supersededBy.body.on)}`
      }).`)
