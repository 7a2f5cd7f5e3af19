'use client'

import { useSearchParams } from 'next/navigation'
import { useEffect, useState } from 'react'
import { newTagCode } from '@/lib/device/newTagCode'
import { tagsOn } from '@/lib/records/view/tags'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { TagFields } from './TagFields'
import { type PrintedTag, TagSheet } from './TagSheet'
import styles from './tags.module.css'
import { countOf, freshTagForm, furnacesFor, type TagForm } from './tagsToPrint'

/** A manager prints sheets of furnace tags: blank ones to be stuck on and scanned, or tags for furnaces on file. */
export function TagSheetsScreen() {
  const furnaceId = useSearchParams().get('furnace') ?? ''
  const { file, me } = useDeviceState()
  const { add, trouble } = useAdd()
  const [form, setForm] = useState(() => freshTagForm(furnaceId))
  const [tried, setTried] = useState(false)
  const [tags, setTags] = useState<readonly PrintedTag[]>()
  const [origin, setOrigin] = useState('')
  useEffect(() => setOrigin(location.origin), [])
  if (me.role !== 'manager') {
    return (
      <Empty
        page
        what="Managers print the tags"
        why="A tag that is stuck on leads everybody to its furnace, so one person keeps count of them."
        todo={
          <p>
            Ask a manager for blank ones. Sticking one on is anybody’s: <a href="/scan">scan it</a>.
          </p>
        }
      />
    )
  }
  const count = form.what === 'blank' ? countOf(form) : furnacesFor(file, form).length
  function change(part: Partial<TagForm>): void {
    setForm((before) => ({ ...before, ...part }))
    setTags(undefined)
  }

  async function make(): Promise<boolean> {
    setTried(true)
    if (count === undefined || count === 0) return false
    if (form.what === 'blank') {
      setTags(Array.from({ length: count }, () => ({ code: newTagCode() })))
      return true
    }
    const asked = furnacesFor(file, form).map((furnace) => {
      const [tag] = tagsOn(file, furnace.id).slice(-1)
      return { furnace, code: tag?.body.code ?? newTagCode(), isNew: tag === undefined }
    })
    const fresh = asked.filter(({ isNew }) => isNew)
    const ids = await add(
      fresh.map(({ furnace, code }) => ({ kind: 'tag', body: { code, furnaceId: furnace.id } })),
    )
    if (ids === undefined) return false
    setTags(
      asked.map(({ furnace, code }) => ({ code, ...(form.site ? { site: furnace.body.siteLabel } : {}) })),
    )
    return true
  }

  return (
    <Stack>
      <div className={styles.setting}>
        <Stack>
          <PageHeader
            above={<a href="/equipment">Equipment</a>}
            title="Furnace tags"
            lead="A tag’s QR code opens the furnace’s page for whoever is signed in. Anybody else sees the sign-in, and the code says nothing of the site."
          />
          <Form save={make}>
            <Sheet
              foot={
                <Button type="submit" kind="main">
                  {count === undefined || count === 0
                    ? 'Make the tags'
                    : `Make ${count} ${count === 1 ? 'tag' : 'tags'}`}
                </Button>
              }
            >
              <TagFields {...{ form, change, file, count }} tried={tried} />
              <Problem>{trouble?.refusal?.sentence}</Problem>
            </Sheet>
          </Form>
          {origin !== '' && forThisMachineOnly(origin) && (
            <Problem>
              These tags would lead to {origin}, which no phone can open. Open this page at the address that
              the phones use, and print from there.
            </Problem>
          )}
          {tags !== undefined && (
            <Row>
              <Button kind="main" onClick={() => window.print()}>
                Print
              </Button>
              <span role="status">
                {tags.length} {tags.length === 1 ? 'tag' : 'tags'}, 24 to a sheet. Print at full size, and cut
                along the dashed lines.
              </span>
            </Row>
          )}
        </Stack>
      </div>
      {tags !== undefined && <TagSheet {...{ tags, origin }} />}
    </Stack>
  )
}

const forThisMachineOnly = (origin: string): boolean =>
  ['localhost', '127.0.0.1', '[::1]'].includes(new URL(origin).hostname)
