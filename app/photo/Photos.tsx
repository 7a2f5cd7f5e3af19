'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { PhotoBody, PhotoShows } from '@/lib/records/kinds/photo'
import type { Option } from '../ui/form/option'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { PhotoStrip } from '../ui/photo/PhotoStrip'
import { Quiet } from '../ui/words/Quiet'
import { AddPhoto, type PhotoOf } from './AddPhoto'

type Props = {
  photos: readonly Entry<PhotoBody>[]
  /** What a photo that is added here belongs to; undefined where none may be added. */
  of: PhotoOf | undefined
  /** What it most likely shows here. */
  shows: PhotoShows
  /** The findings of the case that a photo can show. */
  findings?: readonly Option[]
}

/** The photos of a case or a furnace, small, each opening large, and a place for one more. */
export function Photos({ photos, of, shows, findings }: Props) {
  return (
    <Sheet title="Photos" sub="No people, please: a picture stays with the team.">
      <Stack>
        {photos.length === 0 ? <Quiet>No photo yet.</Quiet> : <PhotoStrip photos={photos} label="Photos" />}
        {of !== undefined && (
          <Fold key={photos.length} summary="Add a photo">
            {() => <AddPhoto {...{ of, shows, findings }} />}
          </Fold>
        )}
      </Stack>
    </Sheet>
  )
}
