'use client'

import '@/lib/records/withoutEval'
import { useId, useState } from 'react'
import { z } from 'zod'
import { useDevice, useDeviceState } from '../device/deviceContext'
import styles from '../oldList/oldList.module.css'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'

const answered = z.union([
  z.object({
    ok: z.literal(true),
    value: z.object({
      entries: z.int(),
      headHash: z.string(),
      withheld: z.int(),
      people: z.object({ added: z.int(), known: z.int() }),
    }),
  }),
  z.object({ ok: z.literal(false), problem: z.object({ message: z.string() }) }),
])

type Taken = { entries: number; headHash: string; withheld: number; people: { added: number } }

/** Outlives the screen, which is drawn anew while what was taken in arrives on this device. */
let takenHere: Taken | undefined

/** Takes an exported log into this server, as long as it is empty. */
export function TakeInALog() {
  const id = useId()
  const device = useDevice()
  const { arrived } = useDeviceState()
  const [file, setFile] = useState<File>()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string>()
  const [taken, setTaken] = useState(takenHere)

  async function send(): Promise<void> {
    if (file === undefined) return setProblem('Choose the .json file that an export made.')
    setBusy(true)
    setProblem(undefined)
    try {
      const response = await fetch('/api/import/log', {
        method: 'POST',
        headers: { 'content-type': 'application/json', accept: 'application/json' },
        body: file,
      })
      const said = answered.safeParse(await response.json().catch(() => undefined))
      if (!said.success) setProblem(`The server’s answer could not be read (${response.status}). Try again.`)
      else if (said.data.ok) {
        takenHere = said.data.value
        setTaken(takenHere)
        await device.sync()
      } else setProblem(said.data.problem.message)
    } catch (cause) {
      setProblem(`The server could not be reached, and nothing was taken in (${cause}). Try again.`)
    } finally {
      setBusy(false)
    }
  }

  if (taken !== undefined) {
    return (
      <Sheet
        title="The log is taken in"
        sub={`${taken.entries} entries, ${taken.withheld} with something withheld.`}
      >
        <p role="status">
          Head hash: <code>{taken.headHash}</code>. It is the one of the old server.
        </p>
        <p>
          {taken.people.added} people who recorded it were added to the team, and may not sign in. Let each of
          them in again under <a href="/people">People</a>, with a link for a new password: their records are
          theirs again.
        </p>
      </Sheet>
    )
  }
  return (
    <Sheet
      title="Take a whole log in"
      sub="From the document of another server. Only an empty server takes one."
      foot={
        arrived === 0 && (
          <Button disabled={busy} onClick={() => void send()}>
            {busy ? 'Checking every entry …' : 'Take it in'}
          </Button>
        )
      }
    >
      <Stack>
        <Problem>{problem}</Problem>
        {arrived > 0 ? (
          <p>
            This server has records, and two logs cannot be made one. Start a new server with an empty data
            folder, set up its first manager, and take the log in there.
          </p>
        ) : (
          <div className={styles.file}>
            <label htmlFor={id}>The exported document</label>
            <input
              id={id}
              type="file"
              name="document"
              accept=".json,application/json"
              onChange={(event) => setFile(event.target.files?.[0])}
            />
          </div>
        )}
      </Stack>
    </Sheet>
  )
}
