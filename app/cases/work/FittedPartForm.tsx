'use client'

import { neverFittedPart } from '@/lib/records/neverFitted'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { RecordForm } from '../../equipment/form/RecordForm'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { foundFittedHref } from '../../foundFitted/foundFittedAddress'
import { TextField } from '../../ui/form/TextField'
import styles from './work.module.css'

type Props = { caseId: string; furnaceId: string; setpoint: Setpoint }

/** Records the part number that is printed on the switch in the furnace. */
export function FittedPartForm({ caseId, furnaceId, setpoint }: Props) {
  const positionId = setpoint.position.id
  const record = useRecordForm<{ printed: string }>({
    draft: `fitted part ${caseId} ${positionId}`,
    fresh: { printed: '' },
    kind: 'fitted part',
    read: ({ printed }) =>
      printed.trim() === ''
        ? {
            gaps: { printed: 'Type the number as the switch prints it; “nothing” where nothing is printed.' },
          }
        : { body: { furnaceId, positionId, caseId, printed } },
  })
  return (
    <RecordForm
      record={record}
      submit="Save the part number"
      refused={{
        title: 'The part number was not saved',
        instead: (
          <a href={foundFittedHref({ positionId, furnaceId, printed: record.form.printed })}>
            Record it as found fitted
          </a>
        ),
      }}
      onSaved={record.startAfresh}
    >
      <TextField
        exact
        label="Part number, as the switch prints it"
        name="printed"
        hint="An adjustable or general-purpose switch is recorded as found fitted instead."
        value={record.form.printed}
        onChange={(event) => record.change({ printed: event.target.value })}
        error={record.errorAt('printed')}
      />
      {neverFittedPart(record.form.printed) !== undefined && (
        <p role="status" className={styles.dangerWords}>
          That is no factory part. Save the number, and{' '}
          <a href={foundFittedHref({ positionId, furnaceId, printed: record.form.printed })}>
            record it as found fitted
          </a>
          : the furnace stays off until the factory part is in.
        </p>
      )}
    </RecordForm>
  )
}
