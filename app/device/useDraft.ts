'use client'

import { useCallback, useEffect, useRef, useState } from 'react'
import { useDevice } from './deviceContext'
import { holdOpen } from './openDrafts'

/** How long after the last key a draft is written, in milliseconds. */
const settleMs = 250

/**
 * A form's value that survives a reload, a crash and a lost session: it is kept on the device as it is typed.
 *
 * @param key names the form, and what it is about
 * @param forgets what is said of one moment only, and is asked for again when the rest comes back; made once
 * @returns the value, a setter, and `done`, which lets go of the draft once its record is in the outbox;
 *   `restored` says that the value was found on the device, `lost` why it can't be kept there
 */
export function useDraft<T extends object>(key: string, initial: T, forgets?: Partial<T>) {
  const device = useDevice()
  const [value, setValue] = useState(initial)
  const [restored, setRestored] = useState(false)
  const [lost, setLost] = useState<string>()
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const touched = useRef(false)
  const unwritten = useRef<T>(undefined)
  const latest = useRef(value)
  latest.current = value

  const write = useCallback(() => {
    clearTimeout(timer.current)
    const value = unwritten.current
    unwritten.current = undefined
    if (value === undefined) return
    device.writeDraft(key, value).then(
      () => setLost(undefined),
      (cause) =>
        setLost(`What you type is not kept on this device (${cause}). Save it before you leave this page.`),
    )
  }, [device, key])

  // A tap on a link leaves at once: what was typed just before it is written first.
  useEffect(() => {
    window.addEventListener('pagehide', write)
    document.addEventListener('visibilitychange', write)
    return () => {
      window.removeEventListener('pagehide', write)
      document.removeEventListener('visibilitychange', write)
      write()
    }
  }, [write])

  // What is said here is kept with what was typed for it: see app/device/openDrafts.ts.
  useEffect(
    () => holdOpen(key, () => (touched.current ? (unwritten.current ?? latest.current) : undefined)),
    [key],
  )

  useEffect(() => {
    touched.current = false
    let gone = false
    device.readDraft(key).then((kept) => {
      // What was typed before the draft came back from the disk is newer than the draft.
      if (gone || touched.current || kept === undefined) return
      touched.current = true
      setValue((now) => ({ ...now, ...(kept as Partial<T>), ...forgets }))
      setRestored(true)
    })
    return () => {
      gone = true
    }
  }, [device, key, forgets])

  const change = useCallback(
    (part: Partial<T>) => {
      touched.current = true
      setValue((now) => {
        const next = { ...now, ...part }
        unwritten.current = next
        clearTimeout(timer.current)
        timer.current = setTimeout(write, settleMs)
        return next
      })
    },
    [write],
  )

  const done = useCallback(async () => {
    clearTimeout(timer.current)
    unwritten.current = undefined
    touched.current = false
    await device.clearDraft(key)
    setRestored(false)
  }, [device, key])

  return { value, change, done, restored, lost }
}
