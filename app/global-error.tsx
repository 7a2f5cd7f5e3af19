'use client'

import './global.css'
import { DangerSteps } from './ui/danger/DangerSteps'
import { Button } from './ui/form/Button'
import styles from './ui/shell/shell.module.css'

/** When even the frame of the pages fails: a way on, and the danger sheet, which is never out of reach. */
export default function FrameError({ reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <html lang="en">
      <head>
        <title>Inchwater</title>
      </head>
      <body>
        <main className={styles.content}>
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
