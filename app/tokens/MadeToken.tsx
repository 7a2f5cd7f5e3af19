'use client'

import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'

/** A token that was just made: here and nowhere else. Whoever has it can ask what the program can. */
export function MadeToken({ name, token }: { name: string; token: string }) {
  return (
    <Sheet
      title={`The token of ${name}`}
      sub="Shown once, and kept nowhere. Put it into the program’s settings now, and into nothing that others read."
    >
      <TextField
        exact
        readOnly
        label="Token"
        name="token"
        value={token}
        onFocus={(event) => event.target.select()}
      />
    </Sheet>
  )
}
