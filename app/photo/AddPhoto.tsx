'use client'

import { type PhotoBody, type PhotoShows, photoShows } from '@/lib/records/kinds/photo'
import { RecordForm } from '../equipment/form/RecordForm'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { Choice } from '../ui/form/Choice'
import { asOptions, type Option } from '../ui/form/option'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { PhotoField } from '../ui/photo/PhotoField'
import { showsWords } from '../ui/photo/photoWords'
import type { TakenPhoto } from '../ui/photo/takenPhoto'

/** What a photo belongs to. */
export type PhotoOf = Pick<PhotoBody, 'furnaceId' | 'positionId' | 'caseId' | 'visitId' | 'reportId'>

type PhotoForm = { photo: TakenPhoto | null; shows: PhotoShows; caption: string; findingId: string }

type Props = { of: PhotoOf; shows: PhotoShows; findings?: readonly Option[] | undefined }

/** The form of a photo that stands for itself: what it shows, and of a case, which finding. */
export function AddPhoto({ of, shows, findings = [] }: Props) {
  const record = useRecordForm<PhotoForm>({
    draft: `photo ${of.visitId ?? of.caseId ?? of.reportId ?? of.furnaceId}`,
    fresh: { photo: null, shows, caption: '', findingId: '' },
    kind: 'photo',
    read: ({ photo, shows, caption, findingId }) =>
      photo === null
        ? {
            gaps: {
              photo: 'There is no picture yet: take a photo, choose one, or wait until it is made smaller.',
            },
          }
        : { body: { ...photo, ...of, shows, caption, findingId } },
  })
  const { form, change, errorAt } = record
  return (
    <RecordForm
      record={record}
      submit="Save the photo"
      refused={{ title: 'This photo was not saved', instead: 'The photo and what you typed are kept here.' }}
      onSaved={() => record.startAfresh()}
    >
      <PhotoField
        label="Photo"
        photo={form.photo}
        onTake={(photo) => change({ photo })}
        onRemove={() => change({ photo: null })}
        error={errorAt('photo')}
      />
      <Choice
        legend="What does it show?"
        name="photo-shows"
        options={asOptions(photoShows, showsWords)}
        value={form.shows}
        onChoose={(shows) => change({ shows })}
        error={errorAt('shows')}
      />
      {findings.length > 0 && (
        <Select
          name="photo-finding"
          label="Which finding does it show?"
          none="None of them"
          value={form.findingId}
          onChange={(event) => change({ findingId: event.target.value })}
          options={findings}
          error={errorAt('findingId')}
        />
      )}
      <TextField
        name="photo-caption"
        label="What is to be seen, in a few words"
        hint="For instance: sag in the vent above the hatch. Name nobody."
        value={form.caption}
        onChange={(event) => change({ caption: event.target.value })}
        error={errorAt('caption')}
      />
    </RecordForm>
  )
}
