import type { TeamFile } from '@/lib/records/fold/teamFile'
import { furnaceWords } from '../equipment/candidates'
import { Check } from '../ui/form/Check'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { Stack } from '../ui/paper/Stack'
import { branchesOf, type TagForm } from './tagsToPrint'

type Props = {
  form: TagForm
  change: (part: Partial<TagForm>) => void
  file: TeamFile
  /** How many tags the answers make; undefined when that is not clear. */
  count: number | undefined
  tried: boolean
}

/** Which tags, for which furnaces, and whether the site is printed on them. */
export function TagFields({ form, change, file, count, tried }: Props) {
  const only = form.furnaceId === '' ? undefined : file.furnaces.get(file.keptId(form.furnaceId))
  const branches = branchesOf(file)
  return (
    <Stack>
      <Choice
        legend="Which tags?"
        name="what"
        options={[
          {
            value: 'blank',
            words: 'Blank tags',
            hint: 'Whoever sticks one on scans it and says which furnace it is on. No two can be mixed up.',
          },
          {
            value: 'furnaces',
            words: only === undefined ? 'Tags for furnaces on file' : `A tag for ${furnaceWords(only)}`,
            hint: 'Recorded now as being on the furnace. Each must go on its own: a wrong one shows a wrong setpoint.',
          },
        ]}
        value={form.what}
        onChoose={(what) => change({ what })}
      />
      {form.what === 'blank' && (
        <TextField
          label="How many?"
          name="count"
          inputMode="numeric"
          hint="24 fill a sheet."
          value={form.count}
          onChange={(event) => change({ count: event.target.value })}
          error={tried && count === undefined ? 'Type a whole number from 1 to 192.' : undefined}
        />
      )}
      {form.what === 'furnaces' && only === undefined && (
        <>
          {branches.length > 0 && (
            <Select
              label="Branch"
              name="branch"
              none="All branches"
              options={branches.map((branch) => ({ value: branch, words: branch }))}
              value={form.branch}
              onChange={(event) => change({ branch: event.target.value })}
            />
          )}
          <Check
            name="withoutTag"
            label="Only furnaces that have no tag yet"
            hint="Without this, those that have one get the same one printed again."
            checked={form.withoutTag}
            onChange={(event) => change({ withoutTag: event.target.checked })}
            error={
              tried && count === 0
                ? 'No furnace is left. Take the tick away, or choose blank tags.'
                : undefined
            }
          />
        </>
      )}
      {form.what === 'furnaces' && (
        <Check
          name="site"
          label="Print the site on each tag"
          hint="Then anybody who sees the tag can read it. Without it, keep the sheet in order: the tags stand by site, A to Z."
          checked={form.site}
          onChange={(event) => change({ site: event.target.checked })}
        />
      )}
    </Stack>
  )
}
