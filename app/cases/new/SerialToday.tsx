'use client'

import { useMemo } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { furnaceWords } from '../../equipment/candidates'
import { namesOf, readsTheSame } from '../../equipment/form/readsTheSame'
import { furnaceNamesOf } from '../../furnace/furnaceTwins'
import { Button, ButtonLink } from '../../ui/form/Button'
import { Row } from '../../ui/paper/Stack'
import { AsPrinted } from '../../ui/words/AsPrinted'
import styles from './new.module.css'

type Props = {
  typed: string
  furnace: Entry<FurnaceBody>
  file: TeamFile
  onPick: (id: string) => void
  /** The form that adds the new furnace in this one's place and leads back here. */
  replaceHref: string
}

/**
 * Warns when the serial number on the plate is not the one on file: another furnace may stand there now. Dashes,
 * blanks and look-alikes make no other number.
 */
export function SerialToday({ typed, furnace, file, onPick, replaceHref }: Props) {
  const serials = useMemo(() => furnaceNamesOf(file).serials, [file])
  const { serial } = furnace.body
  if (typed.trim() === '') return null
  if (serial === undefined) {
    return <p>No serial number is on file for this furnace. This one is recorded with the case.</p>
  }
  if (readsTheSame(namesOf([{ id: furnace.id, text: serial }]), typed).length > 0) return null
  const onFile = readsTheSame(serials, typed)
    .map((id) => file.furnaces.get(id))
    .filter((other) => other !== undefined && other.id !== furnace.id)
  return (
    <div role="status" className={styles.warning}>
      <p>
        <b>
          The file says <AsPrinted text={serial} />. Is it another furnace? Then record that it was replaced.
        </b>{' '}
        A replaced furnace starts its own history. Look at the plate again; if the number on file is the slip,
        go on: ratings of that number are not counted for this case.
      </p>
      <Row>
        {onFile.map(
          (other) =>
            other && (
              <Button key={other.id} onClick={() => onPick(other.id)}>
                It is {furnaceWords(other)}
              </Button>
            ),
        )}
        {onFile.length === 0 && (
          <ButtonLink href={replaceHref}>
            Add the new furnace in its place; what is typed here stays
          </ButtonLink>
        )}
      </Row>
    </div>
  )
}
