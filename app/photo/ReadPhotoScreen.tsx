'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import type { PhotoBody } from '@/lib/records/kinds/photo'
import type { ReportBody } from '@/lib/records/kinds/report'
import { readingsOfPhoto } from '@/lib/records/view/photos'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { OpenFields } from '../report/ReportFields'
import { openQuestions, type ReportForm, readText } from '../report/reportForm'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { SideBySide, Stack } from '../ui/paper/Stack'
import { Picture } from '../ui/photo/Picture'
import { showsWords } from '../ui/photo/photoWords'
import { NoPhoto } from './NoPhoto'
import { freshReading, mayRead, readingBodies } from './secondReading'

/** A second person reads a photo, without seeing what the first one read. */
export function ReadPhotoScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file, me } = useDeviceState()
  const photo = file.photos.get(id)
  if (photo === undefined) return <NoPhoto />
  const [first] = readingsOfPhoto(file, photo)
  if (first === undefined || !mayRead(file, photo, me.id)) {
    return (
      <Empty
        page
        what="There is nothing to read a second time"
        why={
          first === undefined
            ? 'Nobody has recorded a number off this photo yet.'
            : 'You have read this photo already, it was taken back, or its picture is withheld.'
        }
        todo={<a href={`/photo?id=${id}`}>Back to the photo</a>}
      />
    )
  }
  return <Reading key={id} photo={photo} first={first.body} />
}

function Reading({ photo, first }: { photo: Entry<PhotoBody>; first: ReportBody }) {
  const router = useRouter()
  const { file } = useDeviceState()
  const { add, trouble } = useAdd()
  const [asked, setAsked] = useState(false)
  const position = file.positions.get(file.keptId(first.positionId))?.body
  const fresh = useMemo(
    () => (position === undefined ? undefined : freshReading(first, position)),
    [first, position],
  )
  const draft = useDraft<ReportForm | Record<string, never>>(`read photo ${photo.id}`, fresh ?? {})
  if (position === undefined || fresh === undefined) return <NoPhoto />
  const form = { ...fresh, ...draft.value }
  const read = readText(form)
  const values = read.ok ? read.value : []
  const open = openQuestions(form, values, position.kind)
  const typed = form.asWritten.trim() !== ''
  const asks = new Set(
    [
      ...open.keys(),
      ...(['unit', 'action', 'sense', 'confirmed'] as const).filter((field) => form[field]),
    ].filter(() => read.ok && typed),
  )

  async function save(): Promise<boolean> {
    setAsked(true)
    if (!read.ok || open.size > 0) return false
    const bodies = readingBodies(form, values, first, position!)
    const ids = await add(bodies.map((body) => ({ kind: 'report', body })))
    if (ids === undefined) return false
    await draft.done()
    router.push(`/photo?id=${photo.id}`)
    return true
  }

  return (
    <Stack>
      <PageHeader
        above={<a href={`/photo?id=${photo.id}`}>The photo</a>}
        title="Read this photo yourself"
        lead="What the first person read is not shown, so that yours counts as a reading of its own."
      />
      <Form save={save}>
        <SideBySide>
          <Sheet title="The picture">
            <Picture {...photo.body} alt={showsWords[photo.body.shows]} size="large" />
          </Sheet>
          <Sheet
            title="What you read"
            foot={
              <Button type="submit" kind="main">
                Save what I read
              </Button>
            }
          >
            <Stack>
              <TextField
                exact
                name="asWritten"
                label="Letter for letter, as it stands on the picture"
                hint={`Of the switch: ${position.name}. Can’t it be read? Then leave this page; nothing is recorded.`}
                value={form.asWritten}
                onChange={(event) => draft.change({ asWritten: event.target.value, confirmed: false })}
                error={
                  typed || asked ? (read.ok ? trouble?.fields.asWritten : read.problem.message) : undefined
                }
              />
              <OpenFields
                form={form}
                change={draft.change}
                asks={asks}
                errorOf={(field) => (asked ? open.get(field) : undefined)}
              />
              <Problem>{draft.lost ?? trouble?.refusal?.sentence}</Problem>
            </Stack>
          </Sheet>
        </SideBySide>
      </Form>
    </Stack>
  )
}
