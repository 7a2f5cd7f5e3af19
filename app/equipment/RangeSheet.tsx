import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'
import { setpointOf } from '@/lib/records/view/setpoint'
import { answerHref, carrying } from '../phoneDesk/requestAddress'
import { Sheet } from '../ui/paper/Sheet'
import styles from './equipment.module.css'
import { branchName, type RangeBranch } from './equipmentBranches'
import { OnFile } from './OnFile'
import { PartLine } from './PartLine'

type Props = {
  branch: RangeBranch
  file: TeamFile
  settings: RatingSettings
  /** The rating request that somebody is looking for the switch of. */
  request?: Entry<RatingRequestBody>
}

/** One furnace range in the list: its models, its switches, what is on file of each, and their parts. */
export function RangeSheet({ branch, file, settings, request }: Props) {
  const { range, positions } = branch
  const addPosition = carrying(`/equipment/add-position?range=${range.id}`, request)
  return (
    <Sheet
      title={
        <a className={styles.title} href={carrying(`/equipment/range?id=${range.id}`, request)}>
          {branchName(branch)}
        </a>
      }
      sub={<span translate="no">{range.body.modelPatterns.join(' · ')}</span>}
    >
      {positions.length === 0 && (
        <p>
          No switch of it is on file. <a href={addPosition}>Add its first switch position</a>
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
              {request !== undefined && (
                <p>
                  <a href={answerHref(request, position.id)}>Record the answer for {position.body.name}</a>
                </p>
              )}
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
      {request !== undefined && positions.length > 0 && (
        <p>
          Is it none of these? <a href={addPosition}>Add its switch position</a>
        </p>
      )}
    </Sheet>
  )
}
