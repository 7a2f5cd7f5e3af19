'use client'

import { TextField } from '../ui/form/TextField'
import { Sheet } from '../ui/paper/Sheet'

/** A link that is shown once. Whoever has it can use it, so it goes to its person and to nobody else. */
export function OneTimeLink({ words, link }: { words: string; link: string }) {
  return (
    <Sheet title={words} sub="Shown once. Pass it on by a way that only they can read.">
      <TextField
        exact
        readOnly
        label="One-time link"
        name="link"
        value={link}
        onFocus={(event) => event.target.select()}
      />
    </Sheet>
  )
}
