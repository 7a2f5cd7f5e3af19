'use client'

import { positionTemplates } from '@/lib/catalogue/positions'
import { pressureUnits, unitLabel } from '@/lib/core/pressure'
import {
  type ColumnField,
  type Columns,
  columnFields,
  columnWords,
  encodings,
  type Separator,
  separators,
} from '@/lib/records/oldList'
import { Problem } from '../ui/answers/Problem'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { SideBySide, Stack } from '../ui/paper/Stack'
import { type ReadFile, stillMissing } from './importForm'
import type { Import } from './useImport'
import { rowsWords } from './verdictWords'

const encodingWords = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16, little end first',
  'utf-16be': 'UTF-16, big end first',
  'windows-1252': 'Windows-1252 (Western European)',
  'windows-1250': 'Windows-1250 (Central European)',
  macintosh: 'Macintosh Roman',
} as const

const separatorWords: Record<Separator, string> = {
  comma: 'Comma',
  semicolon: 'Semicolon',
  tab: 'Tab',
  bar: 'Vertical bar',
}

/** Step 2: how the file is read, guessed and open to be changed, with an example from each column. */
export function HowItIsRead({ work, read }: { work: Import; read: ReadFile }) {
  const { changeChoices } = work
  const { encoding, table, reading } = read
  const missing = stillMissing(read)
  // Two columns may bear one name: the place tells them apart.
  const headed = table.head.map((name, at) => ({ name, at }))
  const setColumn = (at: number, field: ColumnField | ''): void => {
    const kept = Object.entries(reading.columns).filter(([name, place]) => place !== at && name !== field)
    const columns = Object.fromEntries(kept) as Columns
    changeChoices({ columns: field === '' ? columns : { ...columns, [field]: at } })
  }
  const fieldAt = (at: number): ColumnField | '' =>
    columnFields.find((field) => reading.columns[field] === at) ?? ''
  return (
    <Sheet
      title="2. How it is read"
      sub={`${rowsWords(table.rows.length)}, ${table.head.length} columns. What was guessed can be changed.`}
    >
      <Stack>
        {table.oddities.map((oddity) => (
          <Problem key={oddity}>{oddity}</Problem>
        ))}
        <SideBySide>
          <Select
            label="Encoding"
            name="encoding"
            options={encodings.map((value) => ({ value, words: encodingWords[value] }))}
            value={encoding}
            onChange={(event) =>
              changeChoices({ encoding: event.target.value as typeof encoding, columns: undefined })
            }
          />
          <Select
            label="Between the cells"
            name="separator"
            options={(Object.keys(separators) as Separator[]).map((value) => ({
              value,
              words: separatorWords[value],
            }))}
            value={table.separator}
            onChange={(event) =>
              changeChoices({ separator: event.target.value as Separator, columns: undefined })
            }
          />
          <Select
            label="Decimals are parted by"
            name="decimals"
            hint="Not known: a number that can be read in two ways is refused."
            options={[
              { value: 'point', words: 'Point, 0.65' },
              { value: 'comma', words: 'Comma, 0,65' },
              { value: 'not known', words: 'Not known' },
            ]}
            value={reading.decimals}
            onChange={(event) => changeChoices({ decimals: event.target.value as typeof reading.decimals })}
          />
          <Select
            label="Unit where none is written"
            name="unit"
            none="None: refuse such numbers"
            options={pressureUnits.map((value) => ({ value, words: unitLabel[value] }))}
            value={reading.unit}
            onChange={(event) => changeChoices({ unit: event.target.value as typeof reading.unit })}
          />
          {reading.columns.date !== undefined && (
            <Select
              label="In dates, first comes"
              name="dates"
              options={[
                { value: 'day first', words: 'The day' },
                { value: 'month first', words: 'The month' },
                { value: 'not known', words: 'Not known: refuse dates that can be two days' },
              ]}
              value={reading.dates}
              onChange={(event) => changeChoices({ dates: event.target.value as typeof reading.dates })}
            />
          )}
          <TextField
            label="Position of rows that name none"
            name="position"
            hint={`Only if all of them are of it, for instance ${positionTemplates[0]!.name}.`}
            value={work.choices.position}
            onChange={(event) => changeChoices({ position: event.target.value })}
          />
        </SideBySide>
        {missing.map((sentence) => (
          <Problem key={sentence}>{sentence}</Problem>
        ))}
        <Fold summary="Columns" open={missing.length > 0 || work.plan === undefined}>
          {() => (
            <SideBySide>
              {headed.map(({ name, at }) => (
                <Select
                  key={at}
                  label={`Column ${at + 1}: ${name}`}
                  name={`column-${at}`}
                  hint={exampleIn(read, at)}
                  none="Not read"
                  options={columnFields.map((value) => ({ value, words: columnWords[value] }))}
                  value={fieldAt(at)}
                  onChange={(event) => setColumn(at, event.target.value as ColumnField | '')}
                />
              ))}
            </SideBySide>
          )}
        </Fold>
      </Stack>
    </Sheet>
  )
}

const exampleIn = ({ table }: ReadFile, at: number): string => {
  const example = table.rows.find(({ cells }) => (cells[at] ?? '') !== '')?.cells[at]
  return example === undefined ? 'Empty in every row' : `For instance: ${example.slice(0, 60)}`
}
