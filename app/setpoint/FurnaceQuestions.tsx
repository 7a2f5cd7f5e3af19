'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { feetOf } from '@/lib/catalogue/units'
import type { Ask } from '@/lib/core/rating'
import { failure, type Result } from '@/lib/core/result'
import { metres } from '@/lib/records/fields'
import { metresTyped } from '../furnace/furnaceForm'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { type SetpointAddress, type SetpointPage, setpointHref } from './setpointAddress'

type Props = { asks: readonly Ask[]; address: SetpointAddress; page?: SetpointPage }

const exact = {
  revision: { field: 'revision', label: 'Revision, as the data plate prints it' },
  serial: { field: 'serial', label: 'Serial number' },
  'part number': { field: 'partNumber', label: 'Part number on the switch' },
} as const

/** Asks about the furnace, and only what the answer depends on. The answer goes into the address of the page. */
export function FurnaceQuestions({ asks, address, page }: Props) {
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
    const elevation = elevationIn(typed.feet)
    if (problems.size > 0 || !elevation.ok) return false
    const text = (field: 'revision' | 'serial' | 'partNumber') => typed[field].trim() || undefined
    router.replace(
      setpointHref(
        {
          ...address,
          // Exact: a height that is rounded may lie on the other side of the end of a band.
          elevationMetres: elevation.value,
          revision: text('revision'),
          serial: text('serial'),
          partNumber: text('partNumber'),
        },
        page,
      ),
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

/** The elevation that was typed, in metres, within the limits of every record; undefined for an empty field. */
function elevationIn(feet: string): Result<number | undefined> {
  const typed = metresTyped(feet, 'the elevation in feet', '4800')
  const within = typed.ok ? metres.optional().safeParse(typed.value) : undefined
  return within?.success === false ? failure('elevation-nowhere', within.error.issues[0]!.message) : typed
}

type Typed = { feet: string; revision: string; serial: string; partNumber: string }

/** An elevation that is none; and where nothing is typed at all, the first question. */
function problemsIn(typed: Typed, asks: readonly Ask[]): Map<Ask, string> {
  const texts: Record<Ask, string> = {
    elevation: typed.feet,
    revision: typed.revision,
    serial: typed.serial,
    'part number': typed.partNumber,
  }
  const elevation = elevationIn(typed.feet)
  if (!elevation.ok) return new Map([['elevation', elevation.problem.message]])
  const first = asks[0]
  return first !== undefined && asks.every((ask) => texts[ask].trim() === '')
    ? new Map([[first, `Type the ${first}.`]])
    : new Map()
}
