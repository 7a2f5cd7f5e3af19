'use client'

import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import styles from './helper.module.css'
import type { Worked } from './helperSteps'
import { Reliability } from './Reliability'
import { ThreeWays } from './ThreeWays'
import { useHelperRecord } from './useHelperRecord'
import { WhatCounts } from './WhatCounts'
import { Winters } from './Winters'

/** How often the ranking of causes has been right on the team’s own cases, worked out on this device. */
export function HelperScreen() {
  const { file } = useDeviceState()
  const work = useHelperRecord(file)
  return (
    <Stack>
      <PageHeader
        title="How good is the helper?"
        lead="It orders the looking. Here it is held against your team’s own cases, each one forecast from what was known before it."
        above={<a href="/cases">Cases</a>}
      />
      {'worked' in work ? <Record worked={work.worked} /> : <Busy {...work.progress} />}
    </Stack>
  )
}

function Busy({ through, of }: { through: number; of: number }) {
  return (
    <div className={styles.busy}>
      <p role="status">Going through your team’s cases, one after the other …</p>
      <progress aria-label="How far it is" value={through} max={Math.max(1, of)} />
    </div>
  )
}

function Record({ worked: { record, proven, onFile } }: { worked: Worked }) {
  const { file } = useDeviceState()
  if (!record.ok)
    return (
      <Empty
        what="There is no record yet"
        why={`It takes repaired and proven cases from at least two winters: the first serves to choose how the helper weighs, the later ones are counted. So far ${countProven(proven)} of ${onFile} on this device.`}
        todo={<a href="/cases">Open the cases, and end their visits with what proves the repair</a>}
      />
    )
  return (
    <>
      <ThreeWays record={record.value} file={file} />
      <Reliability record={record.value} file={file} />
      <Winters record={record.value} file={file} />
      <WhatCounts scored={record.value.helper.cases} proven={proven} onFile={onFile} />
    </>
  )
}

const countProven = (proven: number): string =>
  proven === 0 ? 'none is proven' : proven === 1 ? 'one is proven' : `${proven} are proven`
