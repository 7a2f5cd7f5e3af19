'use client'

import { importKind } from '@/lib/records/kinds/import'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { ChooseFile } from './ChooseFile'
import { Confirmed } from './Confirmed'
import { DryRun } from './DryRun'
import { HowItIsRead } from './HowItIsRead'
import { stillMissing } from './importForm'
import { NamesAsked } from './NamesAsked'
import { PastImports } from './PastImports'
import { useImport } from './useImport'

/** Takes over a team’s old list of ratings: file, columns, names, dry run, and only then the log. */
export function ImportScreen() {
  const { me } = useDeviceState()
  if (!importKind.mayAdd.includes(me.role)) {
    return (
      <Empty
        page
        what="A manager imports"
        why={`An old list can hold thousands of numbers, and a ${me.role} may not take over one.`}
        todo={<a href="/people">See who is a manager</a>}
      />
    )
  }
  return <Steps />
}

function Steps() {
  const work = useImport()
  const { file, read, problem, confirmed } = work
  return (
    <Stack>
      <PageHeader
        above={<a href="/people">People</a>}
        title="Import an old list"
        lead="Ratings from a CSV or TSV file. Nothing is written until you have seen what becomes of every row."
      />
      <Problem>{problem}</Problem>
      {confirmed !== undefined && <Confirmed {...confirmed} />}
      <ChooseFile file={file} choose={work.choose} />
      {file !== undefined && read !== undefined && !read.ok && (
        <Problem>{`${read.problem.message} The file is kept here; nothing was written.`}</Problem>
      )}
      {file !== undefined && read?.ok && (
        <>
          <HowItIsRead work={work} read={read.value} />
          {stillMissing(read.value).length === 0 && (
            <>
              <NamesAsked work={work} />
              <DryRun work={work} read={read.value} />
            </>
          )}
        </>
      )}
      {file !== undefined && (
        <Button kind="quiet" onClick={() => void work.forget()}>
          Give this file up
        </Button>
      )}
      <PastImports />
    </Stack>
  )
}
