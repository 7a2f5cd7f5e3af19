'use client'

import './global.css'
import { DangerSteps } from './ui/danger/DangerSteps'
import { Button } from './ui/form/Button'

/** When even the frame of the pages fails: a way on, and the danger sheet, which is never out of reach. */
export default function FrameError({ reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <html lang="en">
      <head>
        <title>Inchwater</title>
      </head>
      <body>
        <main>
          <h1>Inchwater could not be shown</h1>
          <p>Something went wrong in the program. What you had entered is kept on this device.</p>
          <Button kind="main" onClick={reset}>
            Try again
          </Button>
          <DangerSteps />
        </main>
      </body>
    </html>
  )
}
