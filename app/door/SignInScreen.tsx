'use client'

import { useSearchParams } from 'next/navigation'
import { type FormEvent, useEffect, useState } from 'react'
import { fetchMe } from '@/lib/device/transport'
import { rememberPerson } from '../device/whoIsHere'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { useIsAlive } from '../ui/useIsAlive'
import { nextAddress } from './nextAddress'
import { post } from './post'

/** Signs a person in on this device. What they recorded here before, and what waits, is theirs alone. */
export function SignInScreen() {
  const asked = useSearchParams().get('next')
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const alive = useIsAlive()
  const [setUpOpen, setSetUpOpen] = useState(false)

  useEffect(() => {
    fetch('/api/set-up')
      .then((response) => response.json())
      .then((answer) => setSetUpOpen(answer?.value?.open === true))
      // Without an answer the page is a plain sign-in; pressing the button says what is wrong.
      .catch(() => setSetUpOpen(false))
  }, [])

  async function signIn(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const typed = new FormData(event.currentTarget)
    setBusy(true)
    const posted = await post('/api/auth/sign-in', {
      name: typed.get('name'),
      password: typed.get('password'),
    })
    if (!posted.ok) {
      setBusy(false)
      return setProblem(posted.problem.message)
    }
    const me = await fetchMe()
    if (me.ok) rememberPerson(localStorage, me.value)
    location.assign(nextAddress(asked, location.origin))
  }

  return (
    <Stack>
      <PageHeader title="Sign in" lead="Inchwater: setpoints your team has verified." />
      {setUpOpen && (
        <p>
          Nobody is on this team yet. <a href="/set-up">Set it up</a> with the code that the terminal shows.
        </p>
      )}
      <form onSubmit={signIn} method="post" noValidate>
        <Sheet
          foot={
            <Button type="submit" kind="main" disabled={!alive} busy={busy ? 'Signing in …' : undefined}>
              Sign in
            </Button>
          }
        >
          <Stack>
            <Problem>{problem}</Problem>
            <TextField label="Name" name="name" autoComplete="username" required />
            <TextField
              label="Password"
              name="password"
              type="password"
              autoComplete="current-password"
              required
            />
          </Stack>
        </Sheet>
      </form>
      <p>Forgotten? A manager of your team makes you a link for a new one.</p>
    </Stack>
  )
}
