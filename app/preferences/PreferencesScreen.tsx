'use client'

import { type FormEvent, useState } from 'react'
import { readingUnits } from '@/lib/catalogue/units'
import { unitLabel } from '@/lib/core/pressure'
import type { PreferenceBody } from '@/lib/records/kinds/preference'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { usePreference } from '../device/usePreference'
import { forgetPerson } from '../device/whoIsHere'
import { post } from '../door/post'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Choice } from '../ui/form/Choice'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { chooseTheme } from '../ui/shell/theme'
import { KeepReaders } from './KeepReaders'

/** A person's own settings: the unit they read in, light or dark, their password, and leaving this device. */
export function PreferencesScreen() {
  const { me } = useDeviceState()
  const preference = usePreference()
  const { add } = useAdd()
  const set = (part: Partial<PreferenceBody>) =>
    void add([{ kind: 'preference', body: { ...preference, ...part } }])
  return (
    <Stack>
      <PageHeader title="Preferences" lead={`${me.name}, ${me.role}`} />
      <Sheet title="How numbers and pages look">
        <Stack>
          <Choice
            legend="Unit to read in"
            name="unit"
            hint="The other unit stands small beside it. What is printed on a label is never converted."
            options={readingUnits.map((unit) => ({ value: unit, words: unitLabel[unit] }))}
            value={preference.unit}
            onChoose={(unit) => set({ unit })}
          />
          <Choice
            legend="Light or dark"
            name="theme"
            options={[
              { value: 'system', words: 'As the device' },
              { value: 'light', words: 'Light' },
              { value: 'dark', words: 'Dark, for basements' },
            ]}
            value={preference.theme}
            onChoose={(theme) => {
              set({ theme })
              void chooseTheme(theme === 'system' ? undefined : theme)
            }}
          />
          <p>
            Your usual gauge is chosen in the <a href="/gauges">register of gauges</a>.
          </p>
        </Stack>
      </Sheet>
      <Sheet title="Without a signal">
        <KeepReaders />
      </Sheet>
      <ChangePassword />
      <LeaveDevice />
    </Stack>
  )
}

function ChangePassword() {
  const [problem, setProblem] = useState<string>()
  const [changed, setChanged] = useState(false)
  async function change(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const form = event.currentTarget
    const typed = Object.fromEntries(new FormData(form))
    setChanged(false)
    if (typed.password !== typed.again)
      return setProblem('The two new passwords differ. Type the same one twice.')
    const posted = await post('/api/auth/password', { current: typed.current, password: typed.password })
    setProblem(posted.ok ? undefined : posted.problem.message)
    setChanged(posted.ok)
    if (posted.ok) form.reset()
  }
  return (
    <form onSubmit={change} noValidate>
      <Sheet title="Password" foot={<Button type="submit">Change it</Button>}>
        <Stack>
          <Problem>{problem}</Problem>
          <p role="status">{changed && 'Changed. Every other device of yours is signed out.'}</p>
          <TextField label="Password now" name="current" type="password" autoComplete="current-password" />
          <TextField label="New password" name="password" type="password" autoComplete="new-password" />
          <TextField label="The new one again" name="again" type="password" autoComplete="new-password" />
        </Stack>
      </Sheet>
    </form>
  )
}

function LeaveDevice() {
  const { me, waiting, refused } = useDeviceState()
  const [problem, setProblem] = useState<string>()
  const [warned, setWarned] = useState(false)
  const left = waiting.length + refused.length
  async function leave(path: string) {
    if (left > 0 && !warned) return setWarned(true)
    const posted = await post(path)
    if (!posted.ok && posted.problem.code !== 'sign-in-first') return setProblem(posted.problem.message)
    forgetPerson(localStorage, me.id)
    location.assign('/sign-in')
  }
  return (
    <Sheet
      title="Leave"
      foot={
        <Row>
          <Button onClick={() => void leave('/api/auth/sign-out')}>Sign out here</Button>
          <Button onClick={() => void leave('/api/auth/sign-out-everywhere')}>
            Sign out on every device
          </Button>
        </Row>
      }
    >
      <Problem>{problem}</Problem>
      {warned ? (
        <p role="alert">
          {left === 1
            ? '1 record has not been sent. It stays on this device for you, and is sent when you sign in here again.'
            : `${left} records have not been sent. They stay on this device for you, and are sent when you sign in here again.`}{' '}
          <a href="/waiting">See them</a>, or press again to sign out.
        </p>
      ) : (
        <p>The next person on this device sees nothing of yours.</p>
      )}
    </Sheet>
  )
}
