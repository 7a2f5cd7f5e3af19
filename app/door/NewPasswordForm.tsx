'use client'

import { type FormEvent, type ReactNode, useState } from 'react'
import { fetchMe } from '@/lib/device/transport'
import { rememberPerson } from '../device/whoIsHere'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { useIsAlive } from '../ui/useIsAlive'
import { post } from './post'

type Props = {
  /** Where the form is sent, and what goes with it. */
  path: string
  known: Record<string, unknown>
  /** Further fields, above the password. */
  children?: ReactNode
  button: string
}

/** Chooses a password, typed twice, and signs in with it. */
export function NewPasswordForm({ path, known, children, button }: Props) {
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const alive = useIsAlive()

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const { again, ...typed } = Object.fromEntries(new FormData(event.currentTarget))
    if (typed.password !== again) return setProblem('The two passwords differ. Type the same one twice.')
    setBusy(true)
    const posted = await post(path, { ...typed, ...known })
    if (!posted.ok) {
      setBusy(false)
      return setProblem(posted.problem.message)
    }
    const me = await fetchMe()
    if (me.ok) rememberPerson(localStorage, me.value)
    location.assign('/')
  }

  return (
    <form onSubmit={send} method="post" noValidate>
      <Sheet
        foot={
          <Button type="submit" kind="main" disabled={!alive} busy={busy ? 'One moment …' : undefined}>
            {button}
          </Button>
        }
      >
        <Stack>
          <Problem>{problem}</Problem>
          {children}
          <TextField
            label="Password"
            name="password"
            type="password"
            autoComplete="new-password"
            hint="At least 10 characters. Three or four words do well."
            required
          />
          <TextField
            label="The same password again"
            name="again"
            type="password"
            autoComplete="new-password"
            required
          />
        </Stack>
      </Sheet>
    </form>
  )
}
