'use client'

import { useMemo } from 'react'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { recordName } from './recordTitle'
import type { About } from './shown'

/**
 * What the values of a record are shown with on this device.
 * @param beside records that are not in the file and stand on the same page, under their id
 */
export function useAbout(beside: readonly RecordEnvelope[] = nothing): About {
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  return useMemo(() => {
    const here = new Map(beside.map((record) => [record.id, record]))
    return {
      unit,
      names,
      kindOf: (id) => file.records.get(id)?.kind ?? here.get(id)?.kind,
      recordAt: (id) => {
        const found = file.records.get(id)
        if (found !== undefined)
          return { href: `/record?id=${id}`, words: recordName(found.kind, found.entry.body) }
        const record = here.get(id)
        return record && { href: `#${id}`, words: recordName(record.kind, record.body) }
      },
    }
  }, [file, names, unit, beside])
}

const nothing: readonly RecordEnvelope[] = []
