import { TextArea } from '../../ui/form/TextArea'
import { TextField } from '../../ui/form/TextField'
import type { NewCaseForm } from './newCaseForm'

type Props = {
  form: NewCaseForm
  change: (part: Partial<NewCaseForm>) => void
  gaps: Readonly<Record<string, string>>
}

/** What is asked of the first visit. */
export function VisitFields({ form, change, gaps }: Props) {
  return (
    <>
      <TextField
        type="date"
        label="Day of the visit"
        name="on"
        value={form.on}
        onChange={(event) => change({ on: event.target.value })}
        error={gaps.on}
      />
      <TextField
        label="Weather"
        name="weather"
        hint="Frost, snow, wind and from where: blocked and frozen vents come and go with it."
        value={form.weather}
        onChange={(event) => change({ weather: event.target.value })}
        error={gaps.weather}
      />
      <TextField
        label="Licence of this visit"
        name="licence"
        hint="Where the law asks for one."
        value={form.licence}
        onChange={(event) => change({ licence: event.target.value })}
        error={gaps.licence}
      />
      <TextArea
        label="Note"
        name="note"
        value={form.note}
        onChange={(event) => change({ note: event.target.value })}
        error={gaps.note}
      />
    </>
  )
}
