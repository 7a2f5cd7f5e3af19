'use client'

import { useState } from 'react'
import { Button } from '../ui/form/Button'
import { Row } from '../ui/paper/Stack'

type Props = {
  /** Whether the form in which it was said is known. */
  canMend: boolean
  mend(): void
  sendAgain(): void
  drop(): void
}

/** What a person can do with a refused record: mend it in its form, send it again as it is, or withdraw it. */
export function DealWith({ canMend, mend, sendAgain, drop }: Props) {
  const [asked, setAsked] = useState(false)
  if (asked)
    return (
      <>
        <p role="alert">It is in no log, so what it says is lost with it.</p>
        <Row>
          <Button kind="main" autoFocus onClick={drop}>
            Withdraw it for good
          </Button>
          <Button kind="quiet" onClick={() => setAsked(false)}>
            Keep it
          </Button>
        </Row>
      </>
    )
  return (
    <Row>
      {canMend && (
        <Button kind="main" onClick={mend}>
          Mend it in its form
        </Button>
      )}
      <Button onClick={sendAgain}>Send it again as it is</Button>
      <Button kind="quiet" onClick={() => setAsked(true)}>
        Withdraw it
      </Button>
    </Row>
  )
}
