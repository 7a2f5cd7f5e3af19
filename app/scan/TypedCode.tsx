'use client'

import { useState } from 'react'
import type { ReadCode } from '@/lib/device/readers/codes'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'

/** For a code that nothing can read: what is printed beside it, by hand. */
export function TypedCode({ onRead }: { onRead(codes: readonly ReadCode[]): void }) {
  const [typed, setTyped] = useState('')
  const [empty, setEmpty] = useState(false)
  function lookUp(): boolean {
    const text = typed.trim()
    setEmpty(text === '')
    if (text !== '') onRead([{ text, format: 'typed' }])
    return text !== ''
  }
  return (
    <Form save={lookUp}>
      <TextField
        exact
        name="typed"
        label="Or type what is printed beside it"
        hint="A part number, a serial number, or the three groups of four on a furnace tag."
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        error={empty ? 'Type what is printed beside the code.' : undefined}
      />
      <Button type="submit">Look it up</Button>
    </Form>
  )
}
