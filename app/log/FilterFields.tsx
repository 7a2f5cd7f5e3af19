import type { TeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'
import { candidatesOf } from '../equipment/candidates'
import { kindName } from '../record/kindNames'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import styles from './log.module.css'
import type { LogFilters } from './logFilters'

type Props = {
  filters: LogFilters
  change: (part: Partial<LogFilters>) => void
  file: TeamFile
  names: ReadonlyMap<string, string>
}

const byWords = (one: { words: string }, other: { words: string }) =>
  one.words.localeCompare(other.words, 'en')

const kindOptions = Object.keys(recordKinds)
  .map((value) => ({ value, words: kindName(value) }))
  .sort(byWords)

/** Everything that the log can be narrowed down by. */
export function FilterFields({ filters, change, file, names }: Props) {
  return (
    <div className={styles.filters}>
      <Select
        label="Who said it"
        name="person"
        none="Anybody"
        options={[...names].map(([value, words]) => ({ value, words })).sort(byWords)}
        value={filters.person}
        onChange={(event) => change({ person: event.target.value })}
      />
      <Select
        label="Kind of record"
        name="kind"
        none="Any"
        options={kindOptions}
        value={filters.kind}
        onChange={(event) => change({ kind: event.target.value })}
      />
      <Select
        label="Furnace"
        name="furnace"
        none="Any, or none"
        options={candidatesOf(file, 'furnace').map(({ id, words }) => ({ value: id, words }))}
        value={filters.furnace === '' ? '' : file.keptId(filters.furnace)}
        onChange={(event) => change({ furnace: event.target.value })}
      />
      <TextField
        type="date"
        label="Said on this day or later"
        name="from"
        value={filters.from}
        onChange={(event) => change({ from: event.target.value })}
      />
      <TextField
        type="date"
        label="Said on this day or earlier"
        name="to"
        value={filters.to}
        onChange={(event) => change({ to: event.target.value })}
      />
    </div>
  )
}
