'use client'

import { useId } from 'react'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import type { ChosenFile } from './importForm'
import styles from './oldList.module.css'

type Props = { file: ChosenFile | undefined; choose: (file: File) => Promise<void> }

/** Step 1: the file. */
export function ChooseFile({ file, choose }: Props) {
  const id = useId()
  return (
    <Sheet
      title="1. The file"
      sub="CSV or TSV, one rating a row, the names of the columns in the first line."
    >
      <Stack>
        {file !== undefined && (
          <p role="status">
            <b>{file.name}</b>, {(file.bytes.length / 1024).toFixed(0)} kB. It is kept on this device until
            you are done.
          </p>
        )}
        <div className={styles.file}>
          <label htmlFor={id}>{file === undefined ? 'Choose the file' : 'Choose another file'}</label>
          <input
            id={id}
            type="file"
            name="file"
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
            onChange={(event) => {
              const [chosen] = event.target.files ?? []
              if (chosen !== undefined) void choose(chosen)
              event.target.value = ''
            }}
          />
        </div>
        <p>
          A row without proof becomes a lead: it is listed, and no better report is outweighed by it. A
          document with its page, or a call with its reference, and the day, make it more. Rows of adjustable
          or general-purpose switches are refused.
        </p>
      </Stack>
    </Sheet>
  )
}
