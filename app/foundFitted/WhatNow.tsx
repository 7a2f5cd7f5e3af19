'use client'

import { useEffect, useMemo, useRef, useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { PartLines } from '../setpoint/PartLines'
import { ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { FittedWarning } from './FittedWarning'

type Props = { found: Entry<FoundFittedBody>; file: TeamFile }

/** What to do now that it is recorded: leave the furnace off, and get the factory part. It has the focus at once. */
export function WhatNow({ found, file }: Props) {
  const steps = useRef<HTMLElement>(null)
  useEffect(() => steps.current?.focus(), [])
  const { furnaceId, positionId, model } = found.body
  const [now] = useState(() => new Date().toISOString())
  const partLines = useMemo(
    () =>
      positionId === undefined
        ? undefined
        : setpointOf(file, positionId, {}, ratingSettings(file, now))?.partLines,
    [file, positionId, now],
  )
  const query = new URLSearchParams({
    ...(positionId === undefined ? {} : { position: positionId }),
    ...(furnaceId === undefined ? {} : { furnace: furnaceId }),
    ...(model === undefined ? {} : { model }),
  })
  return (
    <Stack>
      <PageHeader
        title="Recorded. Now do this"
        lead="Thank you. What you recorded stays with the furnace and with the setpoint of its switch."
      />
      <section ref={steps} tabIndex={-1} aria-label="What to do now">
        <FittedWarning found={found} file={file} />
      </section>
      <p>
        The maker’s instructions, local codes and a licensed person’s judgement come before anything shown
        here.
      </p>
      <Sheet
        title="The factory part"
        foot={
          <Row>
            {furnaceId !== undefined && (
              <ButtonLink href={`/furnace/repair?${query}`}>
                The factory part is in: record the repair
              </ButtonLink>
            )}
            <ButtonLink href={`/ask?${query}`}>Ask which part and rating is right</ButtonLink>
            {furnaceId !== undefined && (
              <ButtonLink kind="quiet" href={`/furnace?id=${furnaceId}`}>
                See the furnace
              </ButtonLink>
            )}
          </Row>
        }
      >
        {partLines === undefined ? (
          <p>No switch position is on record for it, so no part number can be named.</p>
        ) : (
          <PartLines lines={partLines} />
        )}
      </Sheet>
    </Stack>
  )
}
