'use client'

import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { furnaceWords } from '../../equipment/candidates'
import { Button } from '../../ui/form/Button'

type Props = { furnace: Entry<FurnaceBody>; file: TeamFile; onPick: (id: string) => void }

/** The furnace that was chosen, and the one that took its place, if one did. */
export function WhichFurnace({ furnace, file, onPick }: Props) {
  const newer = counting(file.furnaces).find(
    ({ body }) => body.replaces !== undefined && file.keptId(body.replaces) === furnace.id,
  )
  return (
    <div>
      <p>
        Furnace: <a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>
      </p>
      {newer !== undefined && (
        <p role="status">
          It was replaced by {furnaceWords(newer)}, which has a history of its own.{' '}
          <Button onClick={() => onPick(newer.id)}>Take the one that stands there now</Button>
        </p>
      )}
      <Button kind="quiet" onClick={() => onPick('')}>
        Choose another furnace
      </Button>
    </div>
  )
}
