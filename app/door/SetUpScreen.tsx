'use client'

import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { NewPasswordForm } from './NewPasswordForm'

/** The first visit: whoever can read the server's terminal becomes the first manager. */
export function SetUpScreen() {
  return (
    <Stack>
      <PageHeader
        title="Set up your team"
        lead="The terminal in which the server runs shows a code. It works once, and makes you the first manager."
      />
      <NewPasswordForm path="/api/set-up" known={{}} button="Set up, and sign in">
        <TextField exact label="Code from the terminal" name="code" autoComplete="one-time-code" required />
        <TextField label="Your name, as the team will see it" name="name" autoComplete="name" required />
      </NewPasswordForm>
    </Stack>
  )
}
