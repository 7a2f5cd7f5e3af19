'use client'

import type { CaseView } from '@/lib/records/view/case/caseView'
import { airFreeOf } from '@/lib/records/view/case/dangers'
import { RecordForm } from '../../equipment/form/RecordForm'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { Check } from '../../ui/form/Check'
import { Choice } from '../../ui/form/Choice'
import { TextField } from '../../ui/form/TextField'
import { Fold } from '../../ui/paper/Fold'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { sayMoment } from '../../ui/words/sayDate'
import { type CombustionForm, freshCombustion, readCombustionForm } from './combustionForm'

/** CO in the room and in the flue: what was measured, and a place for one more. No band of CO is a permission to run. */
export function CombustionTests({ view, visitId }: { view: CaseView; visitId: string | undefined }) {
  const { combustionTests, entry, furnace } = view.file
  return (
    <Sheet
      title="CO"
      sub="In the room before you go in and all the time; in the flue after any work on air, vent, gas, exchanger or switch."
    >
      <Stack>
        {combustionTests.length === 0 ? (
          <Quiet>Nothing measured on this case yet.</Quiet>
        ) : (
          <ul>
            {combustionTests.map(({ id, at, body }) => (
              <li key={id}>
                <a href={`/record?id=${id}`}>{sayMoment(at)}</a>, {body.when}:{' '}
                {body.roomCoPpm !== undefined &&
                  `room ${body.roomCoPpm} ppm${body.roomCoLimitPpm === undefined ? '' : `, employer’s limit ${body.roomCoLimitPpm} ppm`}. `}
                {body.flueCoPpm.length > 0 &&
                  `Flue ${airFreeOf(body).map(Math.round).join(', ')} ppm air-free${body.flueCoLimitPpm === undefined ? ', no limit typed' : `, limit ${body.flueCoLimitPpm} ppm from ${body.flueCoLimitFrom}`}. `}
                {body.minutesRunning !== undefined && `After ${body.minutesRunning} min of running.`}
              </li>
            ))}
          </ul>
        )}
        {visitId !== undefined && (
          <Fold key={combustionTests.length} summary="Add a CO test">
            {() => (
              <AddTest
                caseId={entry.id}
                furnaceId={furnace.id}
                visitId={visitId}
                repaired={view.file.repairs.length > 0}
              />
            )}
          </Fold>
        )}
      </Stack>
    </Sheet>
  )
}

type AddProps = { caseId: string; furnaceId: string; visitId: string; repaired: boolean }

function AddTest({ caseId, furnaceId, visitId, repaired }: AddProps) {
  const record = useRecordForm<CombustionForm>({
    draft: `combustion ${visitId}`,
    fresh: { ...freshCombustion, when: repaired ? 'after repair' : 'as found' },
    kind: 'combustion test',
    read: (form) => readCombustionForm(form, { caseId, furnaceId, visitId }),
  })
  const { form, change, errorAt } = record
  const field = (
    name: Exclude<keyof CombustionForm, 'when' | 'showsAirFree'>,
    label: string,
    hint?: string,
  ) => (
    <TextField
      label={label}
      name={name}
      inputMode={name === 'flueCoLimitFrom' || name === 'meter' ? 'text' : 'decimal'}
      hint={hint}
      value={form[name]}
      onChange={(event) => change({ [name]: event.target.value })}
      error={errorAt(name)}
    />
  )
  return (
    <RecordForm
      record={record}
      submit="Save this CO test"
      refused={{ title: 'This CO test was not saved', instead: <a href="/cases">Back to the cases</a> }}
      onSaved={() => record.startAfresh()}
    >
      <Choice
        legend="Before or after a repair"
        name="combustion-when"
        options={[
          { value: 'as found', words: 'As found' },
          { value: 'after repair', words: 'After the repair' },
        ]}
        value={form.when}
        onChoose={(when) => change({ when })}
      />
      {field('roomCoPpm', 'CO in the room, ppm')}
      {field('roomCoLimitPpm', 'The limit your employer has set for the room, ppm')}
      {field('flueCoPpm', 'CO in the flue, ppm', 'Several values one after another, for instance 24 26 25.')}
      {field('oxygenPercent', 'Oxygen in the flue, per cent')}
      <Check
        name="showsAirFree"
        label="The meter shows CO air-free"
        checked={form.showsAirFree}
        onChange={(event) => change({ showsAirFree: event.target.checked })}
      />
      {field(
        'flueCoLimitPpm',
        'The limit for CO in the flue, air-free, ppm',
        'From this unit’s manual. None is filled in for you.',
      )}
      {field('flueCoLimitFrom', 'Where that limit is printed')}
      {field('minutesRunning', 'Minutes the burner had been running')}
      {field('minutesAsked', 'Minutes that the manual asks for')}
      {field('meter', 'The CO meter')}
    </RecordForm>
  )
}
