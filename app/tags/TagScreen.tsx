'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useEffect } from 'react'
import { groupedTagCode, readTagCode } from '@/lib/core/tag'
import { tagStanding } from '@/lib/records/view/tags'
import { useDeviceState } from '../device/deviceContext'
import { furnaceWords } from '../equipment/candidates'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'
import { StickOn } from './StickOn'

/** Where the QR code of a tag leads: on to its furnace, or, for a tag that is on none, to the question which. */
export function TagScreen() {
  const query = useSearchParams()
  const router = useRouter()
  const { file, names } = useDeviceState()
  const read = readTagCode(query.get('c') ?? '')
  const standing = read.ok ? tagStanding(file, read.value) : undefined
  const furnaceId = standing?.is === 'on a furnace' ? standing.furnace.id : undefined
  useEffect(() => {
    if (furnaceId !== undefined) router.replace(`/furnace?id=${furnaceId}`)
  }, [router, furnaceId])
  if (!read.ok || standing === undefined) {
    return (
      <Empty
        page
        what="This is no furnace tag"
        why={read.ok ? '' : read.problem.message}
        todo={<a href="/scan">Scan the tag, or type its code</a>}
      />
    )
  }
  if (standing.is === 'on a furnace') {
    return (
      <p role="status">
        This tag is on <a href={`/furnace?id=${standing.furnace.id}`}>{furnaceWords(standing.furnace)}</a>.
      </p>
    )
  }
  return (
    <Stack>
      <PageHeader
        above={<a href="/scan">Scan a code</a>}
        title="Furnace tag"
        lead={<AsPrinted text={groupedTagCode(read.value)} />}
      />
      {standing.is === 'on two furnaces' && (
        <Sheet title="It was recorded on two furnaces">
          <Stack>
            <p>
              Both cannot be right, and a wrong furnace shows a wrong setpoint. Look at the data plate, and
              withdraw the record that is wrong.
            </p>
            <ul>
              {standing.each.map(({ furnace, tag }) => (
                <li key={tag.id}>
                  <a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>, said by{' '}
                  {names.get(tag.by) ?? 'somebody'}, {sayDate(tag.at)}.{' '}
                  <a href={`/withdraw?record=${tag.id}`}>Withdraw that it is on {furnace.body.siteLabel}</a>
                </li>
              ))}
            </ul>
          </Stack>
        </Sheet>
      )}
      {standing.is === 'withdrawn' && (
        <p>
          It was withdrawn: {standing.tag.withdrawn?.reason}.{' '}
          <a href={`/record?id=${standing.tag.id}`}>See who did and when</a>. If you hold it in your hand, it
          can be stuck on again.
        </p>
      )}
      {standing.is !== 'on two furnaces' && <StickOn code={read.value} />}
    </Stack>
  )
}
