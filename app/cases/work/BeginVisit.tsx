'use client'

import { useAdd } from '../../device/useAdd'
import { dayOf } from '../../equipment/form/today'
import { Problem } from '../../ui/answers/Problem'
import { Button } from '../../ui/form/Button'
import { Sheet } from '../../ui/paper/Sheet'

/** Stands where nothing can be recorded, because no visit is going on. */
export function BeginVisit({ caseId }: { caseId: string }) {
  const { add, trouble } = useAdd()
  return (
    <Sheet
      title="No visit is going on"
      sub="What was recorded stays as it is. To record more, begin a visit."
    >
      <Button
        kind="main"
        onClick={() => void add([{ kind: 'visit', body: { caseId, on: dayOf(new Date()) } }])}
      >
        Begin a visit today
      </Button>
      {trouble?.refusal && <Problem>{trouble.refusal.sentence}</Problem>}
    </Sheet>
  )
}
