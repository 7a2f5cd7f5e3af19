'use client'

import { type ChangeEvent, useId, useState } from 'react'
import { openCodeReader, type ReadCode } from '@/lib/device/readers/codes'
import { pixelsOfFile } from '@/lib/device/readers/pixels'
import { Problem } from '../ui/answers/Problem'
import styles from './scan.module.css'

/** Reads the codes of a picture that was taken before, or is taken now by the device’s own camera program. */
export function StillPicture({ onRead }: { onRead(codes: readonly ReadCode[]): void }) {
  const id = useId()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string>()

  async function read(event: ChangeEvent<HTMLInputElement>): Promise<void> {
    const [file] = event.target.files ?? []
    if (file === undefined) return
    setBusy(true)
    setProblem(undefined)
    const codes = await codesIn(file).catch((cause: unknown) =>
      say(
        `The code reader did not start (${cause instanceof Error ? cause.message : cause}). ${withoutSignal}`,
      ),
    )
    setBusy(false)
    // The same picture can be chosen again.
    event.target.value = ''
    if (Array.isArray(codes)) onRead(codes)
    else setProblem(codes.problem)
  }

  return (
    <div className={styles.picture}>
      <label htmlFor={id}>Or read it from a picture</label>
      <input
        id={id}
        type="file"
        accept="image/*"
        onChange={(event) => void read(event)}
        className={styles.file}
      />
      <p role="status">{busy && 'Reading the picture …'}</p>
      <Problem>{problem}</Problem>
    </div>
  )
}

const withoutSignal =
  'Without a signal it works once it has been used here with one. Type what is printed instead.'

type Said = { problem: string }
const say = (problem: string): Said => ({ problem })

async function codesIn(file: Blob): Promise<ReadCode[] | Said> {
  const pixels = await pixelsOfFile(file)
  if (pixels === undefined)
    return say('This file is no picture that the browser can open. Choose a JPEG or PNG picture.')
  const reader = await openCodeReader()
  try {
    const codes = await reader.read(pixels)
    return codes.length > 0
      ? codes
      : say(
          'No code was found in this picture. Go nearer, hold still and light it from the side, or type what is printed.',
        )
  } finally {
    reader.close()
  }
}
