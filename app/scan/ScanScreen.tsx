'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { buildFindIndex } from '@/lib/core/find'
import type { ReadCode } from '@/lib/device/readers/codes'
import { findEntries } from '@/lib/records/view/findEntries'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { Button } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { CameraView } from './CameraView'
import { ReadOut } from './ReadOut'
import { StillPicture } from './StillPicture'
import { readScanAddress } from './scanAddress'
import { TypedCode } from './TypedCode'

/** Reads the code on a part or a furnace tag, and looks it up. A page of its own: it alone may have the camera. */
export function ScanScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const [read, setRead] = useState<readonly ReadCode[]>()
  const address = useMemo(() => readScanAddress(query), [query])
  const entries = useMemo(() => findEntries(file), [file])
  const entryOf = useMemo(() => new Map(entries.map((entry) => [entry.key, entry])), [entries])
  const index = useMemo(() => buildFindIndex(entries), [entries])
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  return (
    <Stack>
      <PageHeader
        above={
          address.back === undefined ? (
            <a href="/">Find</a>
          ) : (
            <a href={address.back.to}>Back to the form; what is typed there stays</a>
          )
        }
        title="Scan a code"
        lead={leads[address.back?.wants ?? 'anything']}
      />
      {read === undefined ? (
        <>
          <CameraView onRead={setRead} />
          <StillPicture onRead={setRead} />
          <TypedCode onRead={setRead} />
        </>
      ) : (
        <>
          {read.map((code) => (
            <ReadOut
              key={`${code.format} ${code.text}`}
              {...{ code, address, file, settings, index, entryOf }}
            />
          ))}
          <Button wide onClick={() => setRead(undefined)}>
            Scan another
          </Button>
        </>
      )}
    </Stack>
  )
}

const leads = {
  anything:
    'The barcode or QR code on a part, or the tag on a furnace. It is looked up; nothing is recorded.',
  furnace: 'The tag on the furnace, or the barcode of its serial number.',
  part: 'The barcode or QR code on the part.',
} as const
