'use client'

import { useState } from 'react'
import { keepReaders } from '@/lib/device/readers/keepReaders'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Stack } from '../ui/paper/Stack'

/** Has the readers of codes and labels kept on this device before they are needed where there is no signal. */
export function KeepReaders() {
  const [state, setState] = useState<'idle' | 'busy' | 'kept' | { problem: string }>('idle')
  async function keep(): Promise<void> {
    if (navigator.serviceWorker?.controller == null) {
      setState({
        problem:
          'Nothing can be kept here for use without a signal: this address is not https, or the browser does not allow it.',
      })
      return
    }
    setState('busy')
    setState(
      await keepReaders().then(
        () => 'kept' as const,
        (cause: unknown) => ({
          problem: `They could not be fetched (${cause instanceof Error ? cause.message : cause}). Try again with a signal.`,
        }),
      ),
    )
  }
  return (
    <Stack>
      <p>
        Reading codes and labels needs programs of about 8 MB. They are kept from when you first use them;
        fetch them now, and they work in a basement the first time too.
      </p>
      <Button busy={state === 'busy' ? 'Fetching …' : undefined} onClick={() => void keep()}>
        Keep the readers on this device
      </Button>
      <p role="status">{state === 'kept' && 'They are kept.'}</p>
      <Problem>{typeof state === 'object' && state.problem}</Problem>
    </Stack>
  )
}
