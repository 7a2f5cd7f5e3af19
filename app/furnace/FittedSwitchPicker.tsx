'use client'

import { useMemo } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { candidatesOf } from '../equipment/candidates'
import { RecordPicker } from '../equipment/form/RecordPicker'
import { leadingBack } from '../equipment/form/returnTo'
import { ButtonLink } from '../ui/form/Button'
import type { RepairForm } from './repairForm'

type Props = {
  file: TeamFile
  form: Pick<RepairForm, 'positionId' | 'fittedPart' | 'partTyped'>
  change: (part: Partial<RepairForm>) => void
  error: string | undefined
  /** The address of the form, to come back to once a part that was missing has been added. */
  here: string
}

/**
 * Picks the switch that was fitted. Only the factory parts of the position are offered; whatever else was fitted is
 * looked for, and then refused with what to do instead.
 */
export function FittedSwitchPicker({ file, form, change, error, here }: Props) {
  const { positionId, fittedPart, partTyped } = form
  const parts = useMemo(() => candidatesOf(file, 'part'), [file])
  const offered = useMemo(
    () =>
      (partsByPosition(file).get(positionId) ?? [])
        .filter(({ body }) => body.class === 'factory')
        .map(({ id }) => id),
    [file, positionId],
  )
  return (
    <RecordPicker
      legend="Which switch was fitted?"
      name="fittedPart"
      findBy="part number"
      candidates={parts}
      offered={offered}
      typed={partTyped}
      onType={(typed) => change({ partTyped: typed })}
      picked={fittedPart}
      onPick={(picked) => change({ fittedPart: picked })}
      error={error}
      missing={
        <ButtonLink
          kind="quiet"
          href={leadingBack(`/equipment/add-part${positionId === '' ? '' : `?position=${positionId}`}`, here)}
        >
          Not on file? Add the part first, with where the maker lists it; what is typed here stays
        </ButtonLink>
      }
    />
  )
}
