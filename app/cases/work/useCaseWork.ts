'use client'

import { useState } from 'react'
import { dangerValueOf, findingById } from '@/lib/catalogue/findings'
import type { Entry } from '@/lib/records/fold/entry'
import type { FindingBody } from '@/lib/records/kinds/finding'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { useDeviceState } from '../../device/deviceContext'
import { useAdd } from '../../device/useAdd'

/** What may be done with the findings on the open visit of a case, and the way back from the last tap. */
export function useCaseWork(view: CaseView, visitId: string | undefined) {
  const { add, trouble } = useAdd()
  const { me } = useDeviceState()
  const [undo, setUndo] = useState<{ ids: readonly string[]; words: string }>()
  const caseId = view.file.entry.id

  async function record(findings: readonly string[], value: string, words: string): Promise<void> {
    if (visitId === undefined) return
    const ids = await add(
      findings.map((finding) => ({ kind: 'finding', body: { caseId, visitId, finding, value } })),
    )
    if (ids !== undefined) setUndo({ ids, words })
  }

  async function withdraw(ids: readonly string[], reason: string): Promise<void> {
    if (visitId === undefined) return
    const done = await add(ids.map((id) => ({ kind: 'withdrawal', body: { record: id, reason } })))
    if (done !== undefined) setUndo(undefined)
  }

  const isOwn = ({ body, by }: Entry<FindingBody>): boolean => body.visitId === visitId && by === me.id

  return {
    /** Records a value of a finding; with none, takes back what this person said of it on this visit. */
    say(finding: string, value: string | undefined): Promise<void> {
      if (value !== undefined)
        return record([finding], value, `${findingById(finding)?.name ?? finding}: ${value}`)
      const said = view.file.findings.filter((entry) => entry.body.finding === finding && isOwn(entry))
      return withdraw(
        said.map(({ id }) => id),
        'Taken back: not checked',
      )
    },
    /** A danger is closed by finding it gone, and what others said, or said earlier, stands until it is said anew. */
    mayTakeBack: (said: Entry<FindingBody> | undefined): boolean =>
      said !== undefined && isOwn(said) && dangerValueOf(said.body.finding, said.body.value) === undefined,
    /** Rules several findings out at once, after one look for all of them. */
    ruleOut: (findings: readonly string[]): Promise<void> =>
      record(findings, 'ruled out', `${findings.length} findings ruled out`),
    /** Takes back the last tap; what was said before it counts again. */
    takeBack: (): Promise<void> => withdraw(undo?.ids ?? [], 'Tapped by mistake'),
    undo,
    trouble,
  }
}

export type CaseWork = ReturnType<typeof useCaseWork>
