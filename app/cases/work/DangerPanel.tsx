'use client'

import { useEffect, useRef, useState } from 'react'
import { findingById } from '@/lib/catalogue/findings'
import type { Danger } from '@/lib/core/guard'
import { stepsFor } from '@/lib/records/kinds/dangerAnswer'
import type { CaseDangers } from '@/lib/records/view/case/dangers'
import { useAdd } from '../../device/useAdd'
import { Problem } from '../../ui/answers/Problem'
import { Button, ButtonLink } from '../../ui/form/Button'
import { Check } from '../../ui/form/Check'
import { Row } from '../../ui/paper/Stack'
import { capitalised } from './capitalised'
import styles from './work.module.css'

type Props = { dangers: CaseDangers; caseId: string; furnaceId: string; visitId: string | undefined }

/**
 * The dangers that are open, above everything else. Until it is said what was done about them, the causes stay
 * hidden; that they are gone is said by the findings and readings themselves.
 */
export function DangerPanel({ dangers, caseId, furnaceId, visitId }: Props) {
  const { add, trouble } = useAdd()
  const [done, setDone] = useState<string[]>([])
  const { open, unanswered, contradicted } = dangers
  const headline = useRef<HTMLHeadingElement>(null)
  const codes = unanswered.map(({ code }) => code).join(' ')
  useEffect(() => {
    // Found far down the page, it takes the screen and the focus: nobody reads on past it.
    if (codes === '') return
    // A focus alone brings a box that is higher than the screen in by its nearest edge, and the headline stays above.
    headline.current?.focus({ preventScroll: true })
    headline.current?.scrollIntoView({ block: 'start' })
  }, [codes])
  if (open.length === 0) return null
  const gravest = open[0]!
  const { offered } = stepsFor(unanswered.map(({ code }) => code))

  async function answer() {
    if (visitId === undefined) return
    const body = { caseId, visitId, dangers: unanswered.map(({ code }) => code), done }
    if ((await add([{ kind: 'danger answer', body }])) !== undefined) setDone([])
  }

  return (
    <section className={styles.danger} aria-labelledby="case-danger">
      <h2 ref={headline} tabIndex={-1} id="case-danger">
        {gravest.urgency === 'everybody out' ? 'Everybody out now' : 'Stop: leave it off'}
      </h2>
      <ul>
        {open.map(({ code, sentence }) => (
          <li key={code}>{sentence}</li>
        ))}
      </ul>
      {[...contradicted].map((id) => (
        <p key={id}>
          <b>“{findingById(id)?.name ?? id}” was ruled out, and something else on record shows it.</b> The
          danger stands, and what was ruled out counts for no cause.
        </p>
      ))}
      <Steps danger={gravest} />
      <p>{gravest.defers}</p>
      {unanswered.length > 0 && visitId !== undefined && (
        <form
          aria-label="What was done about the danger"
          onSubmit={(event) => {
            event.preventDefault()
            void answer()
          }}
        >
          <p>The causes stay hidden until you say what was done.</p>
          {offered.map((step) => (
            <Check
              key={step}
              name={step}
              label={capitalised(step)}
              checked={done.includes(step)}
              onChange={(event) =>
                setDone(event.target.checked ? [...done, step] : done.filter((each) => each !== step))
              }
            />
          ))}
          {trouble && <Problem>{trouble.refusal?.sentence ?? trouble.fields.done}</Problem>}
          <Button type="submit" kind="main">
            Record what was done
          </Button>
        </form>
      )}
      <Row>
        <ButtonLink kind="danger" href={`/case/shut-down?furnace=${furnaceId}&case=${caseId}`}>
          Leave the furnace off: write the notice
        </ButtonLink>
      </Row>
      <p>
        Put right? Record it where it was found: the finding as ruled out, the reading or the CO test taken
        again, the factory part fitted. CO in the room above the limit is gone only when it is measured low
        after the all-clear. This stays here until then.
      </p>
    </section>
  )
}

const Steps = ({ danger }: { danger: Danger }) => (
  <ol className={styles.steps}>
    {danger.steps.map((step) => (
      <li key={step}>{step}</li>
    ))}
  </ol>
)
