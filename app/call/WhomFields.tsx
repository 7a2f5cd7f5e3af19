'use client'

import { useMemo } from 'react'
import { callSources } from '@/lib/catalogue/sources'
import { organisationsIn } from '@/lib/records/view/desk/organisations'
import type { Question } from '@/lib/records/view/desk/questions'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { laterWords } from '../phoneDesk/OrganisationsSection'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import type { CallForm } from './callForm'

type Props = {
  form: CallForm
  change: (part: Partial<CallForm>) => void
  taken: readonly Question[]
  now: string
  errorOf: (field: 'organisation' | 'newSource') => string | undefined
}

const sourceNames = { 'factory support': 'The maker’s technical line', distributor: 'A distributor' } as const

/** A counter sells the parts of many makers; a technical line answers for its own. */
const notForMaker = {
  'factory support': ' (another maker’s)',
  distributor: ' (not yet asked about this maker)',
} as const

/** Whom the call reaches: an organisation on file, those of the maker first, or a new one. */
export function WhomFields({ form, change, taken, now, errorOf }: Props) {
  const { file } = useDeviceState()
  const organisations = useMemo(() => organisationsIn(file, ratingSettings(file, now)), [file, now])
  const makers = taken.flatMap(({ maker }) => maker?.id ?? [])
  const forMaker = (makerIds: readonly string[]) => makerIds.some((id) => makers.includes(id))
  const listed = organisations.toSorted(
    (one, other) => Number(forMaker(other.makerIds)) - Number(forMaker(one.makerIds)),
  )
  const chosen = listed.find(({ ids }) => ids.includes(form.organisationId))
  return (
    <Sheet title="Whom do you ring?">
      <Stack>
        <Select
          name="organisation"
          label="Organisation"
          none="Choose whom you ring"
          value={form.organisationId}
          onChange={(event) => change({ organisationId: event.target.value })}
          options={[
            ...listed.map(({ entry, makerIds }) => ({
              value: entry.id,
              words: `${entry.body.name}${makers.length === 0 || forMaker(makerIds) ? '' : notForMaker[entry.body.source]}`,
            })),
            { value: 'new', words: 'One that is not on file' },
          ]}
          error={errorOf('organisation')}
        />
        {chosen !== undefined && (
          <p>
            {chosen.entry.body.number !== undefined && (
              <>
                Number on file: <b>{chosen.entry.body.number}</b>.{' '}
              </>
            )}
            <Quiet inline>{laterWords(chosen)}</Quiet>
          </p>
        )}
        {form.organisationId === 'new' && (
          <>
            <TextField
              name="newName"
              label="Its name and branch"
              value={form.newName}
              onChange={(event) => change({ newName: event.target.value })}
            />
            <Choice
              legend="What is it?"
              name="newSource"
              options={callSources.map((value) => ({ value, words: sourceNames[value] }))}
              value={form.newSource === '' ? null : form.newSource}
              onChoose={(newSource) => change({ newSource })}
              error={errorOf('newSource')}
            />
          </>
        )}
        <TextField
          name="number"
          label={form.organisationId === 'new' ? 'Number' : 'Number dialled, if another'}
          inputMode="tel"
          value={form.number}
          onChange={(event) => change({ number: event.target.value })}
        />
        <TextField
          name="person"
          label="Who speaks? First name, department"
          value={form.person}
          onChange={(event) => change({ person: event.target.value })}
        />
        <TextField
          exact
          name="reference"
          label="Their reference or ticket number"
          hint="Without one nobody can find the call again, and it is no proof. Ask for it before you hang up."
          value={form.reference}
          onChange={(event) => change({ reference: event.target.value })}
        />
      </Stack>
    </Sheet>
  )
}
