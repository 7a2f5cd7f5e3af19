'use client'

import { useState } from 'react'
import type { Ask } from '@/lib/core/rating'
import { useDeviceState } from '../device/deviceContext'
import { heightWords } from '../furnace/heightWords'
import { Button } from '../ui/form/Button'
import { FurnaceQuestions } from './FurnaceQuestions'
import { furnaceOf, type SetpointAddress, type SetpointPage } from './setpointAddress'

type Props = { address: SetpointAddress; page?: SetpointPage }

/**
 * For which height, revision, serial and part the answer holds, as far as they are known: what decided it is never
 * hidden behind it. What was typed can be changed here; what the furnace's record says, there.
 */
export function ForWhat({ address, page }: Props) {
  const { file } = useDeviceState()
  const [isOpen, setIsOpen] = useState(false)
  const { id, elevationMetres, revision, serial, partNumber } = furnaceOf(file, address)
  const furnace = id === undefined ? undefined : file.furnaces.get(id)
  const said = [
    elevationMetres === undefined ? undefined : heightWords(elevationMetres),
    revision === undefined ? undefined : `revision ${revision}`,
    serial === undefined ? undefined : `serial ${serial}`,
    partNumber === undefined ? undefined : `part ${partNumber}`,
  ].filter((each) => each !== undefined)
  if (said.length === 0) return null
  const onFile = furnace?.body
  const typed: Ask[] = [
    ...(address.elevationMetres !== undefined && onFile?.elevationMetres === undefined
      ? (['elevation'] as const)
      : []),
    ...(address.revision !== undefined && onFile?.revision === undefined ? (['revision'] as const) : []),
    ...(address.serial !== undefined && onFile?.serial === undefined ? (['serial'] as const) : []),
    ...(address.partNumber !== undefined ? (['part number'] as const) : []),
  ]
  return (
    <section aria-label="For which furnace">
      <p>
        For{' '}
        {furnace !== undefined && (
          <>
            <a href={`/furnace?id=${furnace.id}`}>{furnace.body.siteLabel}</a>:{' '}
          </>
        )}
        <b>{said.join(', ')}</b>.{' '}
        {typed.length > 0 && (
          <Button kind="quiet" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
            Change
          </Button>
        )}
      </p>
      {isOpen && <FurnaceQuestions asks={typed} {...{ address, page }} />}
    </section>
  )
}
