'use client'

import { useState } from 'react'
import type { NewRecord } from '@/lib/device/device'
import { type Checked, checkRecord } from '@/lib/records/checkRecord'
import type { Refusal } from '@/lib/records/envelope'
import { saidAtCorrected } from '@/lib/records/fold/entry'
import { useDevice, useDeviceState } from './deviceContext'
import { mendedHere, saidHere } from './openDrafts'
import { deviceId } from './whoIsHere'

type Trouble = Extract<Checked, { ok: false }>

/**
 * Adds records after judging them as the server will. What is refused is not added, and nothing that was typed is
 * touched: `trouble` says which field or which rule. What stands in the page's forms is kept with the records, so that
 * one that the server refuses can be mended in its form; on a page opened to mend one, the new record takes its place.
 */
export function useAdd() {
  const device = useDevice()
  const { file, me } = useDeviceState()
  const [trouble, setTrouble] = useState<Trouble>()

  /**
   * All of them or none, in one step. A record may name an earlier one of the list by the id made for it.
   * @returns their ids, or undefined when one was refused
   */
  async function add(records: readonly NewRecord[]): Promise<string[] | undefined> {
    const cleaned = records.map((record) => ({ ...record, body: withoutGaps(record.body) }))
    // Put right as the server will put it right: else a slow clock would let pass here what is refused there.
    const saidAt = saidAtCorrected({
      saidAt: new Date().toISOString(),
      clockShiftMs: file.clockShifts.get(deviceId(localStorage)) ?? 0,
    })
    for (const [place, { kind, body }] of cleaned.entries()) {
      const checked = checkRecord(kind, body, file, { ...me, saidAt }, cleaned.slice(0, place))
      if (!checked.ok) {
        setTrouble(checked)
        return undefined
      }
    }
    setTrouble(undefined)
    try {
      return await device.addAll(cleaned, { from: saidHere(), instead: mendedHere() })
    } catch (cause) {
      setTrouble({ ok: false, fields: {}, refusal: notKept(cause) })
      return undefined
    }
  }

  return { add, trouble }
}

/** Nothing was added, because the browser did not take it; what was typed stands in the form. */
const notKept = (cause: unknown): Refusal => ({
  rule: 'kept on the device',
  sentence:
    cause instanceof DOMException && cause.name === 'QuotaExceededError'
      ? 'This device has no room left, so nothing was recorded. What you typed is still here: free some space, then press again.'
      : `This browser did not keep it, so nothing was recorded (${cause instanceof Error ? cause.message : cause}). What you typed is still here: write it down, then reload the page.`,
})

/** A field left empty is left out, at every depth: "not stated" and "empty" are never confused. */
function withoutGaps(body: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(body)
      .filter(([, value]) => value !== undefined && value !== '')
      .map(([key, value]) => [
        key,
        typeof value === 'object' && value !== null && !Array.isArray(value)
          ? withoutGaps(value as Record<string, unknown>)
          : value,
      ]),
  )
}
