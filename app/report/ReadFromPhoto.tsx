'use client'

import { useState } from 'react'
import type { LabelReading, PartCandidate, ValueCandidate } from '@/lib/core/label'
import { failure, type Result } from '@/lib/core/result'
import { readLabelPhoto } from '@/lib/device/labels/readLabelPhoto'
import { counting } from '@/lib/records/fold/teamFile'
import { useDeviceState } from '../device/deviceContext'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { usePictureBlob } from '../ui/photo/usePicture'
import { AsPrinted } from '../ui/words/AsPrinted'
import { Quiet } from '../ui/words/Quiet'
import styles from './read.module.css'
import type { ReportForm } from './reportForm'

type Props = {
  sha256: string
  form: ReportForm
  change: (part: Partial<ReportForm>) => void
}

/** What the label in the photo seems to say. A tap puts it into its field, where it stays marked until it is checked. */
export function ReadFromPhoto({ sha256, form, change }: Props) {
  const { file } = useDeviceState()
  const photo = usePictureBlob(sha256)
  const [busy, setBusy] = useState(false)
  const [read, setRead] = useState<{ of: string; result: Result<LabelReading> }>()
  const parts = counting(file.parts)
  if (photo === undefined) return null

  async function start(blob: Blob): Promise<void> {
    setBusy(true)
    const numbers = parts.map(({ body }) => body.partNumber)
    const result = await readLabelPhoto(blob, numbers).catch((cause: unknown) =>
      failure('broken-off', `Reading broke off (${cause}). Try again, or type what the label says.`),
    )
    setBusy(false)
    setRead({ of: sha256, result })
  }

  function takePart({ text, onFile }: PartCandidate): void {
    const same = parts.filter(({ body }) => onFile.includes(body.partNumber))
    change({
      partNumber: text,
      partNumberRead: text,
      ...(same.length === 1 ? { readOffPart: same[0]!.id } : {}),
    })
  }

  const result = read?.of === sha256 ? read.result : undefined
  return (
    <div className={styles.candidates}>
      <Button busy={busy ? 'Reading the label …' : undefined} onClick={() => void start(photo)}>
        {result === undefined ? 'Read the label in this photo' : 'Read it again'}
      </Button>
      <Quiet>On this device; the picture goes nowhere. The first time about 7 MB are fetched for it.</Quiet>
      <p role="status">
        {result?.ok && 'It seems to say the following. Nothing is filled in until you choose it.'}
      </p>
      <Problem>{result !== undefined && !result.ok && result.problem.message}</Problem>
      {result?.ok && (
        <>
          <Candidates
            name="Ratings read from the photo"
            what="the rating"
            candidates={result.value.values}
            now={form.asWritten}
            onTake={({ text }: ValueCandidate) => change({ asWritten: text, asWrittenRead: text })}
          />
          <Candidates
            name="Part numbers read from the photo"
            what="the part number"
            candidates={result.value.parts}
            now={form.partNumber}
            onTake={takePart}
          />
        </>
      )}
    </div>
  )
}

/** So many are worth comparing; the others are scraps. */
const shown = 4

type CandidatesProps<Each> = {
  name: string
  what: string
  candidates: readonly Each[]
  /** What the field holds now. */
  now: string
  onTake: (candidate: Each) => void
}

function Candidates<Each extends ValueCandidate | PartCandidate>({
  name,
  what,
  candidates,
  now,
  onTake,
}: CandidatesProps<Each>) {
  if (candidates.length === 0) return null
  return (
    <ul aria-label={name} className={styles.list}>
      {candidates.slice(0, shown).map((candidate) => (
        <li key={candidate.text} className={styles.candidate}>
          <p>
            <AsPrinted text={candidate.text} /> {!candidate.offered && <b>Doubtful: look twice.</b>}
          </p>
          <Quiet>{candidate.why.join(' ')}</Quiet>
          {candidate.text === now ? (
            <p>It is in the field.</p>
          ) : (
            <Button kind={candidate.offered ? 'plain' : 'quiet'} onClick={() => onTake(candidate)}>
              Take “{candidate.text}” as {what}
              {now.trim() === '' ? '' : `, in place of “${now.trim()}”`}
            </Button>
          )}
        </li>
      ))}
    </ul>
  )
}
