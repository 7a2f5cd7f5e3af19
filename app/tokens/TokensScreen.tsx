'use client'

import { useCallback, useEffect, useState } from 'react'
import { fetchTokens, type ListedToken } from '@/lib/device/tokens'
import { useDeviceState } from '../device/deviceContext'
import { type Posted, post } from '../door/post'
import { Empty } from '../ui/answers/Empty'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { sayDate, sayMoment } from '../ui/words/sayDate'
import { MadeToken } from './MadeToken'
import { MakeTokenForm } from './MakeTokenForm'

/** The office programs that may ask for setpoints and file cases, and their tokens. For managers. */
export function TokensScreen() {
  const { me } = useDeviceState()
  const [tokens, setTokens] = useState<readonly ListedToken[]>()
  const [problem, setProblem] = useState<string>()
  const [made, setMade] = useState<{ name: string; token: string }>()
  const isManager = me.role === 'manager'

  const load = useCallback(async () => {
    const called = await fetchTokens()
    if (called.ok) setTokens(called.value)
    else setProblem(called.message)
  }, [])
  useEffect(() => void (isManager && load()), [isManager, load])

  async function after(posted: Posted): Promise<void> {
    setProblem(posted.ok ? undefined : posted.problem.message)
    if (posted.ok) await load()
  }

  if (!isManager) {
    return (
      <Empty
        page
        what="Tokens are for managers"
        why="A token lets an office program read setpoints and file cases in the team’s name."
        todo={<a href="/people">See who is a manager</a>}
      />
    )
  }
  return (
    <Stack>
      <PageHeader
        above={<a href="/people">People</a>}
        title="Tokens"
        lead="With a token, a program in the office asks for setpoints with their standing, and files cases. What it files is written down as said by the program."
        actions={<a href="/api-help">What a program can ask</a>}
      />
      <Problem>{problem}</Problem>
      {made !== undefined && <MadeToken {...made} />}
      <MakeTokenForm
        onMade={async (name, token) => {
          setMade({ name, token })
          await after({ ok: true, value: undefined })
        }}
      />
      {tokens === undefined && problem === undefined && <p role="status">Asking the server …</p>}
      {tokens?.length === 0 && (
        <Empty
          what="No program has a token"
          why="Nobody has made one, so only people reach the team’s file."
          todo="Make one above when an office program shall ask."
        />
      )}
      {tokens?.map((token) => (
        <Sheet
          key={token.id}
          title={token.name}
          sub={`${token.role}, ${stateWords(token)}`}
          foot={
            token.state === 'works' ? (
              <Button kind="quiet" onClick={() => void post(`/api/tokens/${token.id}/end`).then(after)}>
                End this token of {token.name}
              </Button>
            ) : undefined
          }
        >
          <p>
            Made by {token.madeBy}, {sayMoment(token.madeAt)}.{' '}
            {token.lastUsedAt === null ? 'Never used.' : `Last used ${sayMoment(token.lastUsedAt)}.`}
          </p>
        </Sheet>
      ))}
    </Stack>
  )
}

const dayMs = 24 * 60 * 60 * 1000

/** The end is the moment after the last day. */
const lastDay = (expiresAt: string): string => sayDate(new Date(Date.parse(expiresAt) - dayMs).toISOString())

function stateWords({ state, expiresAt }: ListedToken): string {
  if (state === 'works') return `works until ${lastDay(expiresAt)}`
  if (state === 'has ended') return `ended after ${lastDay(expiresAt)}`
  return state === 'was ended' ? 'was ended' : 'taken off the team'
}
