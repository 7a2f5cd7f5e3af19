import { causes } from '@/lib/catalogue/causes'
import { unlistedCause } from '@/lib/core/diagnosis'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { candidatesOf } from '../../equipment/candidates'
import { Select } from '../../ui/form/Select'
import { TextField } from '../../ui/form/TextField'
import { causeName } from '../work/causeName'
import { type CaseFilters, standingFilters } from './caseFilters'
import { knownOptions, standingWords } from './filterWords'
import styles from './list.module.css'

type Props = {
  filters: CaseFilters
  change: (part: Partial<CaseFilters>) => void
  file: TeamFile
}

const causeOptions = [...causes.map(({ id }) => id), unlistedCause].map((value) => ({
  value,
  words: causeName(value),
}))

/** Everything that the list can be narrowed down by, beside the words that are typed. */
export function FilterFields({ filters, change, file }: Props) {
  const branches = [
    ...new Set(counting(file.furnaces).flatMap(({ body }) => (body.branch ? [body.branch] : []))),
  ].sort()
  return (
    <div className={styles.filters}>
      <Select
        label="How it stands"
        name="standing"
        none="Any"
        options={standingFilters.map((value) => ({ value, words: standingWords(value) }))}
        value={filters.standing}
        onChange={(event) => change({ standing: event.target.value as CaseFilters['standing'] })}
      />
      <Select
        label="Cause"
        name="cause"
        none="Any, or none named"
        options={causeOptions}
        value={filters.cause}
        onChange={(event) => change({ cause: event.target.value })}
      />
      <Select
        label="How well the cause is known"
        name="known"
        none="Any"
        options={knownOptions}
        value={filters.known}
        onChange={(event) => change({ known: event.target.value as CaseFilters['known'] })}
      />
      <Select
        label="Model range"
        name="range"
        none="Any"
        options={candidatesOf(file, 'equipment range').map(({ id, words }) => ({ value: id, words }))}
        value={filters.range}
        onChange={(event) => change({ range: event.target.value })}
      />
      {(branches.length > 0 || filters.branch !== '') && (
        <Select
          label="Branch"
          name="branch"
          none="Any"
          options={branches.map((value) => ({ value, words: value }))}
          value={filters.branch}
          onChange={(event) => change({ branch: event.target.value })}
        />
      )}
      <TextField
        type="date"
        label="Opened on this day or later"
        name="from"
        value={filters.from}
        onChange={(event) => change({ from: event.target.value })}
      />
      <TextField
        type="date"
        label="Opened on this day or earlier"
        name="to"
        value={filters.to}
        onChange={(event) => change({ to: event.target.value })}
      />
    </div>
  )
}
