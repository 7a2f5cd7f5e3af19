'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import { fetchSetAside, type SetAside } from '@/lib/device/managing'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { useDeviceState } from '../device/deviceContext'
import { type Posted, post } from '../door/post'
import { useAbout } from '../record/useAbout'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Row, Stack } from '../ui/paper/Stack'
import { notTaken } from './notTaken'
import { SetAsideSheet } from './SetAsideSheet'

/** What devices handed over whose session a manager ended: a manager admits each record to the log, or refuses it. */
export function SetAsideScreen() {
  const { me } = useDeviceState()
  const [list, setList] = useState<readonly SetAside[]>()
  const [problem, setProblem] = useState<string>()
  const [done, setDone] = useState<string>()
  const [why, setWhy] = useState<ReadonlyMap<string, string>>(new Map())
  const whole = useMemo(() => (list ?? []).flatMap(({ record }) => (isWhole(record) ? [record] : [])), [list])
  const about = useAbout(whole)

  const load = useCallback(async () => {
    const called = await fetchSetAside()
    if (called.ok) setList(called.value)
    else setProblem(called.message)
  }, [])
  const isManager = me.role === 'manager'
  useEffect(() => {
    if (isManager) void load()
  }, [isManager, load])

  const after = async (posted: Posted, words: string): Promise<void> => {
    setProblem(posted.ok ? undefined : posted.problem.message)
    const left = posted.ok ? notTaken(posted.value, about) : new Map()
    setWhy(left)
    setDone(posted.ok && left.size === 0 ? words : undefined)
    await load()
  }
  const admit = async (ids: readonly string[]) =>
    after(await post('/api/set-aside/admit', { records: ids }), admittedWords(ids.length))
  const refuse = async (id: string, reason: string) =>
    after(await post('/api/set-aside/refuse', { records: [id], reason }), '1 record is kept out of the log')

  if (!isManager)
    return (
      <Empty
        page
        what="Only a manager sees what is set aside"
        why="It waited on devices whose session a manager ended, and nobody has looked at it yet."
        todo={<a href="/people">Who is a manager</a>}
      />
    )
  const undecided = (list ?? []).filter(({ refused }) => refused === undefined)
  return (
    <Stack>
      <PageHeader
        title="Set aside"
        lead="What waited on devices that a manager ended. The team sees nothing of it until it is admitted."
      />
      <Problem>{problem}</Problem>
      <p role="status">{done !== undefined && `Done: ${done}.`}</p>
      {list === undefined && problem === undefined && <p role="status">Asking the server …</p>}
      {list !== undefined && undecided.length === 0 && (
        <Empty
          what="Nothing waits for you"
          why="No record of an ended device is undecided."
          todo={<a href="/people">To the team’s devices</a>}
        />
      )}
      {undecided.length > 1 && (
        <Row>
          <Button kind="main" onClick={() => void admit(undecided.map(({ record }) => record.id))}>
            Admit all {undecided.length}, in their order
          </Button>
        </Row>
      )}
      {list?.map((item) => (
        <SetAsideSheet
          key={`${item.device} ${item.record.id}`}
          {...{ item, about, admit, refuse }}
          why={why.get(item.record.id)}
        />
      ))}
    </Stack>
  )
}

const isWhole = (record: SetAside['record']): record is RecordEnvelope =>
  record.kind !== undefined && record.body !== undefined

const admittedWords = (count: number): string =>
  count === 1 ? '1 record is in the log' : `${count} records are in the log`
