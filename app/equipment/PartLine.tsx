import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PartBody } from '@/lib/records/kinds/part'
import styles from './equipment.module.css'
import { generalPurposeMeaning, partClassNames } from './partClassWords'

/** A part in a line: its number, what it is, who says so, and what replaced it. */
export function PartLine({ part, file }: { part: Entry<PartBody>; file: TeamFile }) {
  const { partNumber, class: partClass, listedIn } = part.body
  const newer = counting(file.supersessions)
    .filter(({ body }) => file.keptId(body.oldPartId) === part.id)
    .flatMap(({ body }) => file.parts.get(file.keptId(body.newPartId))?.body.partNumber ?? [])
  return (
    <div>
      <a href={`/record?id=${part.id}`} className={styles.number} translate="no">
        {partNumber}
      </a>{' '}
      {[
        partClassNames[partClass],
        listedIn === undefined ? undefined : `listed in ${listedIn}`,
        newer.length === 0 ? undefined : `replaced by ${newer.join(' and ')}`,
      ]
        .filter((words) => words !== undefined)
        .join(', ')}
      .{partClass === 'general-purpose' && ` ${generalPurposeMeaning}`}
    </div>
  )
}
