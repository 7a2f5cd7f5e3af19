'use client'

import { useState } from 'react'
import { findingById } from '@/lib/catalogue/findings'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { useAdd } from '../../device/useAdd'

/** What may be done with a finding on the open visit of a case, and the way back from the last tap. */
export function useCaseWork(view: CaseView, visitId: string | undefined) {
  const { add, trouble } = useAdd()
  const [undo, setUndo] = useState<{ id: string; words: string }>()
  const caseId = view.file.entry.id

  /** Records a value of a finding; with none, takes back all that was said of it on this case. */
  async function say(finding: string, value: string | undefined): Promise<void> {
    if (visitId === undefined) return
    const name = findingById(finding)?.name ?? finding
    if (value === undefined) {
      const said = view.file.findings.filter(({ body }) => body.finding === finding)
      await add(
        said.map(({ id }) => ({
          kind: 'withdrawal',
          body: { record: id, reason: 'Taken back: not checked' },
        })),
      )
      setUndo(undefined)
      return
    }
    const ids = await add([{ kind: 'finding', body: { caseId, visitId, finding, value } }])
    if (ids !== undefined) setUndo({ id: ids[0]!, words: `${name}: ${value}` })
  }

  /** Takes back the last tap; what was said of that finding before it counts again. */
  async function takeBack(): Promise<void> {
    if (undo === undefined) return
    const ids = await add([{ kind: 'withdrawal', body: { record: undo.id, reason: 'Tapped by mistake' } }])
    if (ids !== undefined) setUndo(undefined)
  }

  return { say, takeBack, undo, trouble }
}

export type CaseWork = ReturnType<typeof useCaseWork>
