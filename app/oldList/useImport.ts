'use client'

import '@/lib/records/withoutEval'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { z } from 'zod'
import { newRecordId } from '@/lib/device/device'
import {
  fieldsOf,
  gatherAsked,
  type Plan,
  planImport,
  recordsOf,
  type Step,
  whatIsOnFile,
} from '@/lib/records/oldList'
import { useDevice, useDeviceState } from '../device/deviceContext'
import { useDraft } from '../device/useDraft'
import { workInSlices } from '../helper/workInSlices'
import { type ChosenFile, freshChoices, type ImportChoices, mostFileBytes, readFile } from './importForm'

const fileKey = 'import file'
const chosenFile = z.object({
  name: z.string(),
  bytes: z.custom<Uint8Array>((value) => ArrayBuffer.isView(value)),
  sha256: z.string(),
})

/** What was confirmed: how many rows and records, and the import that they belong to. */
export type Confirmed = { importId: string; rows: number; records: number }

/**
 * The import of an old list from its file to its records. File and choices are kept on the device, so that a reload
 * loses nothing; once confirmed, the records are in the outbox, and a broken connection goes on where it broke.
 */
export function useImport() {
  const device = useDevice()
  const { file: teamFile, me } = useDeviceState()
  const {
    value: choices,
    change,
    done: forgetChoices,
  } = useDraft<ImportChoices>('import choices', freshChoices)
  const [file, setFile] = useState<ChosenFile>()
  const [problem, setProblem] = useState<string>()
  const [plan, setPlan] = useState<Plan>()
  const [step, setStep] = useState<Step>()
  const [kept, setKept] = useState<Step>()
  const [confirmed, setConfirmed] = useState<Confirmed>()
  const run = useRef(0)

  useEffect(() => {
    let gone = false
    void device.readDraft(fileKey).then((kept) => {
      const known = chosenFile.safeParse(kept)
      if (!gone && known.success) setFile((now) => now ?? known.data)
    })
    return () => {
      gone = true
      run.current += 1
    }
  }, [device])

  const read = useMemo(() => (file === undefined ? undefined : readFile(file, choices)), [file, choices])
  const readable = read?.ok ? read.value : undefined
  const asked = useMemo(() => {
    if (readable === undefined) return undefined
    const { table, reading } = readable
    const rows = table.rows.map((row) => fieldsOf(row, reading.columns))
    return gatherAsked(rows, reading.position, whatIsOnFile(teamFile), choices.answers)
  }, [readable, teamFile, choices.answers])

  const changeChoices = useCallback(
    (part: Partial<ImportChoices>) => {
      run.current += 1
      setPlan(undefined)
      setStep(undefined)
      change(part)
    },
    [change],
  )

  const choose = useCallback(
    async (chosen: File) => {
      setProblem(undefined)
      if (chosen.size > mostFileBytes)
        return setProblem('This file is longer than 50 MB. Split it, and import one part after the other.')
      const bytes = new Uint8Array(await chosen.arrayBuffer())
      const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
      const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
      const next = { name: chosen.name.slice(0, 200), bytes, sha256 }
      changeChoices({ ...freshChoices })
      setConfirmed(undefined)
      setFile(next)
      await device
        .writeDraft(fileKey, next)
        .catch((cause) =>
          setProblem(`The file is not kept on this device (${cause}). Don’t leave this page.`),
        )
    },
    [device, changeChoices],
  )

  async function judge(): Promise<void> {
    if (readable === undefined || file === undefined) return
    run.current += 1
    const mine = run.current
    setPlan(undefined)
    setStep({ done: 0, of: readable.table.rows.length })
    const { table, reading } = readable
    const { answers, takeOdd } = choices
    const work = planImport({
      table,
      reading,
      answers,
      takeOdd,
      fileName: file.name,
      file: teamFile,
      me: me.id,
      now: new Date().toISOString(),
      newId: newRecordId,
    })
    const judged = await workInSlices(work, setStep, () => run.current === mine)
    if (judged === undefined) return
    setStep(undefined)
    setPlan(judged)
  }

  async function forget(): Promise<void> {
    run.current += 1
    setFile(undefined)
    setPlan(undefined)
    setStep(undefined)
    await device.clearDraft(fileKey)
    await forgetChoices()
    change(freshChoices)
  }

  async function confirm(): Promise<void> {
    if (plan === undefined || file === undefined || readable === undefined) return
    const about = {
      fileName: file.name,
      sha256: file.sha256,
      encoding: readable.encoding,
      separator: readable.table.separator,
    }
    const records = recordsOf(plan, about, newRecordId)
    const [first] = records
    if (first === undefined) return
    const keptOf = (done: number) => setKept({ done, of: records.length })
    keptOf(0)
    try {
      await device.addAll(records, { told: keptOf })
    } catch (cause) {
      return setProblem(
        `Nothing was taken over: this browser does not keep so many records (${cause instanceof Error ? cause.message : String(cause)}). Free some space on the device, then confirm again.`,
      )
    } finally {
      setKept(undefined)
    }
    const rows = plan.verdicts.filter(({ outcome }) => outcome === 'taken over').length
    await forget()
    setConfirmed({ importId: first.id, rows, records: records.length })
  }

  return {
    file,
    read,
    asked,
    choices,
    changeChoices,
    problem,
    plan,
    step,
    kept,
    confirmed,
    choose,
    judge,
    confirm,
    forget,
  }
}

export type Import = ReturnType<typeof useImport>
