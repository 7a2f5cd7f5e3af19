'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { feetOf, metresOf } from '@/lib/catalogue/units'
import type { Ask } from '@/lib/core/rating'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { type SetpointAddress, setpointHref } from './setpointAddress'

type Props = { asks: readonly Ask[]; address: SetpointAddress }

const exact = {
  revision: { field: 'revision', label: 'Revision, as the data plate prints it' },
  serial: { field: 'serial', label: 'Serial number' },
  'part number': { field: 'partNumber', label: 'Part number on the switch' },
} as const

/** Asks about the furnace, and only what the answer depends on. The answer goes into the address of the setpoint. */
export function FurnaceQuestions({ asks, address }: Props) {
  const router = useRouter()
  const [tried, setTried] = useState(false)
  const [typed, setTyped] = useState({
    feet: address.elevationMetres === undefined ? '' : String(Math.round(feetOf(address.elevationMetres))),
    revision: address.revision ?? '',
    serial: address.serial ?? '',
    partNumber: address.partNumber ?? '',
  })
  const change = (part: Partial<typeof typed>) => setTyped({ ...typed, ...part })
  const problems = problemsIn(typed, asks)
  const problemAt = (ask: Ask) => (tried ? problems.get(ask) : undefined)

  function show(): boolean {
    setTried(true)
    if (problems.size > 0) return false
    const text = (field: 'revision' | 'serial' | 'partNumber') => typed[field].trim() || undefined
    router.replace(
      setpointHref({
        ...address,
        elevationMetres:
          typed.feet.trim() === '' ? address.elevationMetres : Math.round(metresIn(typed.feet)),
        revision: text('revision'),
        serial: text('serial'),
        partNumber: text('partNumber'),
      }),
    )
    return true
  }

  return (
    <Form save={show}>
      {asks.includes('elevation') && (
        <TextField
          label="Elevation of the site, in feet"
          name="elevation"
          inputMode="numeric"
          hint="It is on maps and in phone compasses."
          value={typed.feet}
          onChange={(event) => change({ feet: event.target.value })}
          error={problemAt('elevation')}
        />
      )}
      {(['revision', 'serial', 'part number'] as const)
        .filter((ask) => asks.includes(ask))
        .map((ask) => {
          const { field, label } = exact[ask]
          return (
            <TextField
              key={ask}
              exact
              label={label}
              name={field}
              value={typed[field]}
              onChange={(event) => change({ [field]: event.target.value })}
              error={problemAt(ask)}
            />
          )
        })}
      <Button type="submit" kind="main">
        Show its rating
      </Button>
    </Form>
  )
}

const metresIn = (feet: string): number => metresOf(Number(feet.replaceAll(',', '').trim()))

type Typed = { feet: string; revision: string; serial: string; partNumber: string }

/** An elevation that is none; and where nothing is typed at all, the first question. */
function problemsIn(typed: Typed, asks: readonly Ask[]): Map<Ask, string> {
  const texts: Record<Ask, string> = {
    elevation: typed.feet,
    revision: typed.revision,
    serial: typed.serial,
    'part number': typed.partNumber,
  }
  const metres = metresIn(typed.feet)
  if (asks.includes('elevation') && typed.feet.trim() !== '' && !(metres > -500 && metres < 9000))
    return new Map([['elevation', 'Type the elevation in feet as a number, for instance 4800.']])
  const first = asks[0]
  return first !== undefined && asks.every((ask) => texts[ask].trim() === '')
    ? new Map([[first, `Type the ${first}.`]])
    : new Map()
}
