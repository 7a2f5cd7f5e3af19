'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { newRecordId } from '@/lib/device/device'
import { useDeviceState } from '../../device/deviceContext'
import { useAdd } from '../../device/useAdd'
import { useDraft } from '../../device/useDraft'
import { dayOf } from '../../equipment/form/today'
import { freshCase, lastLicence, type NewCaseForm, readNewCase } from './newCaseForm'

/** The form of a new case: what is typed and for which furnace, what is still missing, and how it is saved. */
export function useNewCase() {
  const router = useRouter()
  const query = useSearchParams()
  const { file, me } = useDeviceState()
  const { add, trouble } = useAdd()
  const asked = query.get('furnace') ?? ''
  /** This form's own address, without what was chosen on it. */
  const here = asked === '' ? '/cases/new' : `/cases/new?furnace=${asked}`
  // The furnace that was chosen here, or added on the way, stands in the address: a reload must not lose it.
  const [chosen, setChosen] = useState(() => query.get('on') ?? asked)
  const [now] = useState(() => new Date().toISOString())
  const [caseId] = useState(newRecordId)
  const [tried, setTried] = useState(false)
  const today = dayOf(new Date(now))
  const fresh = useMemo(
    () => freshCase(today, me.role === 'technician' ? lastLicence(file, me.id) : ''),
    [file, me, today],
  )
  const draft = useDraft<NewCaseForm>(`new case ${asked}`, fresh)
  const furnace = file.furnaces.get(file.keptId(chosen))
  const read = readNewCase(draft.value, furnace, caseId)

  function choose(id: string): void {
    setChosen(id)
    const address = id === '' ? here : `${here}${asked === '' ? '?' : '&'}on=${id}`
    window.history.replaceState(window.history.state, '', address)
  }

  async function save(): Promise<boolean> {
    setTried(true)
    if ('gaps' in read || (await add(read.records)) === undefined) return false
    await draft.done()
    router.push(`/case?id=${caseId}`)
    return true
  }

  return {
    draft,
    startAfresh: () => {
      draft.change(fresh)
      setTried(false)
      void draft.done()
    },
    furnace,
    choose,
    here,
    today,
    now,
    save,
    gaps: { ...trouble?.fields, ...(tried && 'gaps' in read ? read.gaps : {}) } as Readonly<
      Record<string, string>
    >,
    refusal: trouble?.refusal?.sentence,
  }
}
