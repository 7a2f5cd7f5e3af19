'use client'

import type { TeamFile } from '@/lib/records/fold/teamFile'
import { partChain } from '@/lib/records/view/partChain'
import { PartLines } from '../../setpoint/PartLines'
import { Problem } from '../../ui/answers/Problem'
import { Button } from '../../ui/form/Button'
import { Check } from '../../ui/form/Check'
import { TextField } from '../../ui/form/TextField'
import { Quiet } from '../../ui/words/Quiet'
import type { EndForm } from './endForm'
import { factoryOnly, partOnFile } from './partWaitedFor'

type Props = {
  form: EndForm
  change: (part: Partial<EndForm>) => void
  errorAt: (...fields: string[]) => string | undefined
  file: TeamFile
}

/** Which part is waited for: its number, what has replaced it since, and where it is ordered. */
export function PartFields({ form, change, errorAt, file }: Props) {
  return (
    <>
      <TextField
        exact
        id="end-partNumber"
        label="Part number"
        name="partNumber"
        hint="As the maker’s parts list for this model and serial prints it."
        value={form.partNumber}
        onChange={(event) => change({ partNumber: event.target.value, supersessionChecked: false })}
        error={errorAt('partNumber')}
      />
      <WhatReplacesIt
        typed={form.partNumber}
        file={file}
        onTake={(partNumber) => change({ partNumber, supersessionChecked: false })}
      />
      <Check
        id="end-supersessionChecked"
        name="supersessionChecked"
        label="I checked whether a newer number has replaced it"
        checked={form.supersessionChecked}
        onChange={(event) => change({ supersessionChecked: event.target.checked })}
        error={errorAt('supersessionChecked')}
      />
      <TextField
        id="end-orderedWhere"
        label="Where it is ordered"
        name="orderedWhere"
        hint="With the order’s number, where there is one."
        value={form.orderedWhere}
        onChange={(event) => change({ orderedWhere: event.target.value })}
        error={errorAt('orderedWhere')}
      />
    </>
  )
}

type ReplacesProps = { typed: string; file: TeamFile; onTake: (partNumber: string) => void }

/** The line of numbers that a part on file belongs to, with the current one to take over. */
function WhatReplacesIt({ typed, file, onTake }: ReplacesProps) {
  if (typed.trim() === '') return null
  const part = partOnFile(file, typed)
  if (part === undefined)
    return (
      <Quiet>
        No switch with this number is on file, so nothing is known here of what has replaced it. Check it in
        the maker’s own list.
      </Quiet>
    )
  const fits = factoryOnly(file, typed)
  if (!fits.ok) return <Problem>{fits.problem.message}</Problem>
  const chain = partChain(file, part.id)
  const current = chain.at(-1)?.part ?? part
  return (
    <div>
      {part.body.class === 'not known' && (
        <p>Nobody has said whether this is the factory part. Ask the maker before you order it.</p>
      )}
      {current.id === part.id ? (
        <p>On file, nothing has replaced it.</p>
      ) : (
        <>
          <p>
            <b>{part.body.partNumber} has been replaced.</b> Order the current number; its rating is its own
            unless the maker says that the setting is the same.
          </p>
          <PartLines lines={[chain]} />
          <Button onClick={() => onTake(current.body.partNumber)}>
            Take {current.body.partNumber} instead
          </Button>
        </>
      )}
    </div>
  )
}
