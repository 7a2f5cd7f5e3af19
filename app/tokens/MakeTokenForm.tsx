'use client'

import '@/lib/records/withoutEval'
import { useState } from 'react'
import { z } from 'zod'
import { post } from '../door/post'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Choice } from '../ui/form/Choice'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'

type Role = 'dispatcher' | 'technician'
const roleOptions = [
  { value: 'dispatcher', words: 'Dispatcher' },
  { value: 'technician', words: 'Technician' },
] as const satisfies readonly { value: Role; words: string }[]
const answered = z.object({ token: z.string() })

type Props = {
  /** @param token shown once: the server keeps its hash only */
  onMade: (name: string, token: string) => Promise<void>
}

/** Makes a token for an office program, with a role and a last day. What was typed stays until it is made. */
export function MakeTokenForm({ onMade }: Props) {
  const [form, setForm] = useState<{ name: string; role: Role; until: string }>({
    name: '',
    role: 'dispatcher',
    until: '',
  })
  const [problem, setProblem] = useState<string>()

  async function make(): Promise<boolean> {
    const posted = await post('/api/tokens', form)
    const made = posted.ok ? answered.safeParse(posted.value) : undefined
    if (made?.success !== true) {
      setProblem(
        posted.ok ? 'The server’s answer could not be read. Load the page again.' : posted.problem.message,
      )
      return false
    }
    setProblem(undefined)
    await onMade(form.name, made.data.token)
    setForm({ name: '', role: form.role, until: '' })
    return true
  }

  return (
    <Form save={make}>
      <Sheet
        title="Make a token"
        sub="It is shown once. A second one for the same program goes by the same name."
        foot={
          <Button type="submit" kind="main">
            Make the token
          </Button>
        }
      >
        <Stack>
          <Problem>{problem}</Problem>
          <TextField
            label="Name of the program, as the team will see it"
            name="name"
            hint="For instance: Office scheduler."
            value={form.name}
            onChange={(event) => setForm({ ...form, name: event.target.value })}
          />
          <Choice
            legend="It may do what this role may"
            name="role"
            hint="Never what only a manager may: that needs a person who answers for it."
            options={roleOptions}
            value={form.role}
            onChoose={(role) => setForm({ ...form, role })}
          />
          <TextField
            type="date"
            label="Last day on which it works"
            name="until"
            hint="At most a year ahead."
            value={form.until}
            onChange={(event) => setForm({ ...form, until: event.target.value })}
          />
        </Stack>
      </Sheet>
    </Form>
  )
}
