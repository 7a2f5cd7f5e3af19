import type { RatingSettings } from '@/lib/core/rating'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { setpointOf } from '@/lib/records/view/setpoint'
import { Sheet } from '../ui/paper/Sheet'
import styles from './equipment.module.css'
import { branchName, type RangeBranch } from './equipmentBranches'
import { OnFile } from './OnFile'
import { PartLine } from './PartLine'

type Props = { branch: RangeBranch; file: TeamFile; settings: RatingSettings }

/** One furnace range in the list: its models, its switches, what is on file of each, and their parts. */
export function RangeSheet({ branch, file, settings }: Props) {
  const { range, positions } = branch
  return (
    <Sheet
      title={
        <a className={styles.title} href={`/equipment/range?id=${range.id}`}>
          {branchName(branch)}
        </a>
      }
      sub={<span translate="no">{range.body.modelPatterns.join(' · ')}</span>}
    >
      {positions.length === 0 && (
        <p>
          No switch of it is on file.{' '}
          <a href={`/equipment/add-position?range=${range.id}`}>Add its first switch position</a>
        </p>
      )}
      <ul className={styles.list}>
        {positions.map(({ position, parts }) => {
          const setpoint = setpointOf(file, position.id, {}, settings)
          return (
            <li key={position.id}>
              <a className={styles.name} href={`/setpoint?position=${position.id}`}>
                {position.body.name}
              </a>{' '}
              {setpoint !== undefined && <OnFile setpoint={setpoint} />}
              <ul className={styles.under}>
                {parts.length === 0 && <li>No part number is on file for it.</li>}
                {parts.map((part) => (
                  <li key={part.id}>
                    <PartLine part={part} file={file} />
                  </li>
                ))}
              </ul>
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}
