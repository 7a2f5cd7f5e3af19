import { sources } from '@/lib/catalogue/sources'
import { betweenWords, senseWords, stageWords, tapWords } from '@/lib/catalogue/switchKinds'
import { unitLabel } from '@/lib/core/pressure'
import type { FurnaceForRating } from '@/lib/core/rating'
import { betweens, sourceKinds, stages, taps } from '@/lib/core/vocabulary'
import { pressureUnits } from '@/lib/records/fields'
import { canBePhotographed, type PhotoShows } from '@/lib/records/kinds/photo'
import { Check } from '../ui/form/Check'
import { Choice } from '../ui/form/Choice'
import { asOptions, type Option } from '../ui/form/option'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { Stack } from '../ui/paper/Stack'
import { PhotoField } from '../ui/photo/PhotoField'
import { CheckWhatWasRead } from './CheckWhatWasRead'
import { shownBy } from './photoRecord'
import { ReadFromPhoto } from './ReadFromPhoto'
import { proofAsked, type ReportForm } from './reportForm'

export type FieldProps = {
  form: ReportForm
  change: (part: Partial<ReportForm>) => void
  /** What is wrong or missing, by field of the form. */
  errorOf: (field: keyof ReportForm) => string | undefined
  /** Tells these fields apart from those of another report in the same form: radio buttons of one name are one group. */
  group?: string
}

const named = (field: keyof ReportForm, group: string | undefined): string =>
  group === undefined ? field : `${field}-${group}`

/** Photos of these are read by the device; a page or a gauge is read by people. */
const hasText: readonly string[] = ['rating label', 'data plate']

/** A field of text that is bound to the form. */
function Text({
  name,
  label,
  hint,
  exact = false,
  type,
  form,
  change,
  errorOf,
  group,
}: FieldProps & {
  name: keyof ReportForm
  label: string
  hint?: string
  exact?: boolean
  type?: 'date'
}) {
  return (
    <TextField
      name={named(name, group)}
      label={label}
      hint={hint}
      exact={exact}
      type={type}
      value={String(form[name])}
      onChange={(event) => change({ [name]: event.target.value })}
      error={errorOf(name)}
    />
  )
}

/** What the text itself leaves open: unit, action, suction or pressure. Asked, never filled in. */
export function OpenFields(props: FieldProps & { asks: ReadonlySet<keyof ReportForm> }) {
  const { form, change, errorOf, asks, group } = props
  return (
    <>
      {asks.has('unit') && (
        <Choice
          legend="Which unit? None is written."
          name={named('unit', group)}
          options={pressureUnits
            .filter((unit) => ['inH2O', 'Pa', 'mbar', 'mmH2O'].includes(unit))
            .map((unit) => ({ value: unit, words: unitLabel[unit] }))}
          value={form.unit === '' ? null : form.unit}
          onChoose={(unit) => change({ unit })}
          error={errorOf('unit')}
        />
      )}
      {asks.has('action') && (
        <Choice
          legend="Does it close or open at this number?"
          name={named('action', group)}
          hint="Letters like PR or PF are not decoded: makers differ on them."
          options={[
            { value: 'closes', words: 'Closes (make)' },
            { value: 'opens', words: 'Opens (break)' },
            { value: 'not stated', words: 'It does not say' },
          ]}
          value={form.action === '' ? null : form.action}
          onChoose={(action) => change({ action })}
          error={errorOf('action')}
        />
      )}
      {asks.has('sense') && (
        <Choice
          legend="Suction or pressure?"
          name={named('sense', group)}
          options={[
            { value: 'suction', words: senseWords.suction },
            { value: 'pressure', words: senseWords.pressure },
            { value: 'not stated', words: 'It does not say' },
          ]}
          value={form.sense === '' ? null : form.sense}
          onChoose={(sense) => change({ sense })}
          error={errorOf('sense')}
        />
      )}
      {asks.has('confirmed') && (
        <Check
          name={named('confirmed', group)}
          label="I looked again: this is what is written"
          checked={form.confirmed}
          onChange={(event) => change({ confirmed: event.target.checked })}
          error={errorOf('confirmed')}
        />
      )}
    </>
  )
}

type SourceProps = FieldProps & {
  parts: readonly Option[]
  /** What to look at again of the part that is chosen. */
  elsewhere: string | undefined
  people: readonly Option[]
  gauges: readonly Option[]
}

const photoLabels: Readonly<Record<PhotoShows, string>> = {
  'rating label': 'Photo of the label',
  'data plate': 'Photo of the data plate',
  gauge: 'Photo of the gauge',
  'document page': 'Photo of the page',
  other: 'Photo',
}

/** What the number rests on, and what lets somebody else check it. */
export function SourceFields({ parts, elsewhere, people, gauges, ...props }: SourceProps) {
  const { form, change, errorOf } = props
  const asked = proofAsked(form.source)
  return (
    <Stack>
      <Select
        name="source"
        label="What does the number rest on?"
        none="Choose the source"
        hint={form.source === '' ? undefined : sources[form.source].hint}
        value={form.source}
        onChange={(event) => change({ source: event.target.value as ReportForm['source'] })}
        options={sourceKinds
          .filter((source) => source !== 'imported')
          .map((source) => ({ value: source, words: sources[source].words }))}
        error={errorOf('source')}
      />
      {asked === 'part' && (
        <Select
          name="readOffPart"
          label="Which part is it?"
          none={parts.length === 0 ? 'No part is on file' : 'Choose the part'}
          hint={
            <>
              The part number on the switch. Not listed? <a href="/equipment">Add the part</a>, with where the
              maker lists it.
            </>
          }
          value={form.readOffPart}
          onChange={(event) => change({ readOffPart: event.target.value })}
          options={parts}
          error={errorOf('readOffPart')}
        />
      )}
      {asked === 'part' && <p role="status">{elsewhere}</p>}
      {asked === 'document' && (
        <>
          <Text {...props} name="documentName" label="Document, with its number" exact />
          <Text {...props} name="documentPage" label="Page" exact />
          <Text {...props} name="documentEdition" label="Edition or date, if printed" exact />
        </>
      )}
      {asked === 'call' && (
        <>
          <Text {...props} name="organisation" label="Whom did you ring?" />
          <Text {...props} name="saidBy" label="Who said it? First name, department" />
          <Text
            {...props}
            name="reference"
            label="Their reference or ticket number"
            hint="Without one nobody can find the call again, and it is no proof."
            exact
          />
          <Choice
            legend="Read back digit by digit, and confirmed?"
            name="readBack"
            options={[
              { value: 'yes', words: 'Yes' },
              { value: 'no', words: 'No' },
            ]}
            value={form.readBack === '' ? null : form.readBack}
            onChoose={(readBack) => change({ readBack })}
            error={errorOf('readBack')}
          />
          <Select
            name="secondPersonId"
            label="Did somebody else listen?"
            none="Nobody else"
            value={form.secondPersonId}
            onChange={(event) => change({ secondPersonId: event.target.value })}
            options={people}
          />
        </>
      )}
      {asked === 'gauge' && (
        <Select
          name="gaugeId"
          label="Gauge of the bench check"
          none="Choose the gauge"
          value={form.gaugeId}
          onChange={(event) => change({ gaugeId: event.target.value })}
          options={gauges}
        />
      )}
      {canBePhotographed(form.source) && (
        <PhotoField
          label={photoLabels[shownBy(form.source)]}
          hint="Every character in the frame, no people. It counts as proof once the server holds the picture, and somebody else can read it."
          photo={form.photo}
          onTake={(photo) => change({ photo })}
          onRemove={() => change({ photo: null })}
          error={errorOf('photo')}
        >
          {form.photo !== null && hasText.includes(shownBy(form.source)) && (
            <ReadFromPhoto sha256={form.photo.sha256} {...{ form, change }} />
          )}
        </PhotoField>
      )}
      <Text {...props} name="saidOn" label="Day on which the source said it, if not today" type="date" />
      <div>
        <Text {...props} name="partNumber" label="Part number that the source names" exact />
        <CheckWhatWasRead
          what="the part number"
          value={form.partNumber}
          read={form.partNumberRead}
          onChecked={() => change({ partNumberRead: '' })}
        />
      </div>
    </Stack>
  )
}

/** Which furnaces it holds for, and where it is measured: kept as not stated unless the source says so. */
export function BundleFields(props: FieldProps & { furnace: FurnaceForRating }) {
  const { form, change, errorOf, furnace, group } = props
  return (
    <Stack>
      <Choice
        legend="Which furnaces does the source say it holds for?"
        name={named('covers', group)}
        options={[
          { value: 'as stated', words: 'Some: it states a range' },
          { value: 'all', words: 'Every one of this range' },
          ...(furnace.id === undefined || furnace.serial === undefined
            ? []
            : [
                {
                  value: 'this serial' as const,
                  words: 'Only this furnace',
                  hint: `It names this very serial, ${furnace.serial}.`,
                },
              ]),
          {
            value: 'not stated',
            words: 'The source does not say',
            hint:
              furnace.id === undefined
                ? 'Then it is a lead until somebody finds out.'
                : 'Then it counts for this furnace, and is a lead for every other.',
          },
        ]}
        value={form.covers === '' ? null : form.covers}
        onChoose={(covers) => change({ covers })}
        error={errorOf('covers')}
      />
      {form.covers === 'as stated' && (
        <>
          <Text {...props} name="revisionFrom" label="Revision from" exact />
          <Text {...props} name="revisionTo" label="Revision to" exact />
          <Text {...props} name="serialFrom" label="Serial from" exact />
          <Text {...props} name="serialTo" label="Serial to" exact />
          <Text {...props} name="elevationFromFeet" label="Elevation from, feet" />
          <Text {...props} name="elevationToFeet" label="Elevation to, feet" />
        </>
      )}
      <details>
        <summary>Stage, points and tap, if the source states them</summary>
        <Stack>
          <Select
            name={named('stage', group)}
            label="Stage"
            value={form.stage}
            onChange={(event) => change({ stage: event.target.value as ReportForm['stage'] })}
            options={asOptions(stages, stageWords)}
            error={errorOf('stage')}
          />
          <Select
            name={named('between', group)}
            label="Measured"
            value={form.between}
            onChange={(event) => change({ between: event.target.value as ReportForm['between'] })}
            options={asOptions(betweens, betweenWords)}
          />
          <Select
            name={named('tap', group)}
            label="Where the hose ends"
            value={form.tap}
            onChange={(event) => change({ tap: event.target.value as ReportForm['tap'] })}
            options={asOptions(taps, tapWords)}
          />
        </Stack>
      </details>
      <TextArea
        name={named('note', group)}
        label="Note"
        value={form.note}
        onChange={(event) => change({ note: event.target.value })}
        error={errorOf('note')}
      />
    </Stack>
  )
}
