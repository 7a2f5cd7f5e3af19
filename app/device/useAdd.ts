'use client'

import { useState } from 'react'
import { type Checked, checkRecord } from '@/lib/records/checkRecord'
import { useDevice, useDeviceState } from './deviceContext'

type Trouble = Extract<Checked, { ok: false }>

/**
 * Adds records after judging them as the server will. What is refused is not added, and nothing that was typed is
 * touched: `trouble` says which field or which rule.
 */
export function useAdd() {
  const device = useDevice()
  const { file, me } = useDeviceState()
  const [trouble, setTrouble] = useState<Trouble>()

  /** All of them or none. @returns their ids, or undefined when one was refused */
  async function add(
    records: { kind: string; body: Record<string, unknown> }[],
  ): Promise<string[] | undefined> {
    const cleaned = records.map(({ kind, body }) => ({ kind, body: withoutGaps(body) }))
    for (const { kind, body } of cleaned) {
      const checked = checkRecord(kind, body, file, me)
      if (!checked.ok) {
        setTrouble(checked)
        return undefined
      }
    }
    setTrouble(undefined)
    const ids: string[] = []
    for (const { kind, body } of cleaned) ids.push(await device.add(kind, body))
    return ids
  }

  return { add, trouble }
}

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
