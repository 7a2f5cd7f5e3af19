'use client'

import { type FormEvent, useState } from 'react'
import { feetOf, metresOf } from '@/lib/catalogue/units'
import type { Ask } from '@/lib/core/rating'
import { Button } from '../ui/form/Button'
import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'
import type { SetpointAddress } from './setpointAddress'

type Props = {
  asks: readonly Ask[]
  address: SetpointAddress
  onAnswer: (address: SetpointAddress) => void
}

/** Asks about the furnace, and only what the answer depends on. */
export function FurnaceQuestions({ asks, address, onAnswer }: Props) {
  const [feet, setFeet] = useState(
    address.elevationMetres === undefined ? '' : String(Math.round(feetOf(address.elevationMetres))),
  )
  const [problem, setProblem] = useState<string>()
  if (asks.length === 0) return null

  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault()
    const typed = new FormData(event.currentTarget)
    const text = (name: string) => String(typed.get(name) ?? '').trim() || undefined
    const elevation = feet.trim() === '' ? undefined : metresOf(Number(feet.replace(',', '')))
    if (elevation !== undefined && !(elevation > -500 && elevation < 9000)) {
      setProblem(
        'Type the elevation in feet as a number, for instance 4800. It is on maps and in phone compasses.',
      )
      return
    }
    setProblem(undefined)
    onAnswer({
      ...address,
      elevationMetres: elevation === undefined ? address.elevationMetres : Math.round(elevation),
      revision: text('revision') ?? address.revision,
      serial: text('serial') ?? address.serial,
      partNumber: text('partNumber') ?? address.partNumber,
    })
  }

  return (
    <Sheet title="Which furnace is it?" sub="The rating on file depends on this. Look at the data plate.">
      <form onSubmit={submit} noValidate>
        {asks.includes('elevation') && (
          <TextField
            label="Elevation of the site, in feet"
            name="elevation"
            inputMode="numeric"
            value={feet}
            onChange={(event) => setFeet(event.target.value)}
            error={problem}
          />
        )}
        {asks.includes('revision') && (
          <TextField
            exact
            label="Revision, as the data plate prints it"
            name="revision"
            defaultValue={address.revision}
          />
        )}
        {asks.includes('serial') && (
          <TextField exact label="Serial number" name="serial" defaultValue={address.serial} />
        )}
        {asks.includes('part number') && (
          <TextField
            exact
            label="Part number on the switch"
            name="partNumber"
            defaultValue={address.partNumber}
          />
        )}
        <Button type="submit" kind="main">
          Show its rating
        </Button>
      </form>
    </Sheet>
  )
}
