'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { type CaseView, caseViewOf } from '@/lib/records/view/case/caseView'
import { useDeviceState } from '../../device/deviceContext'

/** The case that the page's address names, its readings held against the ratings of now; undefined if it is not here. */
export function useCase(): { view: CaseView | undefined; now: string } {
  const id = useSearchParams().get('id') ?? ''
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const view = useMemo(() => caseViewOf(file, id, now), [file, id, now])
  return { view, now }
}
