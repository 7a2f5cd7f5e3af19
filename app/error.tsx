'use client'

import { Empty } from './ui/answers/Empty'
import { Button } from './ui/form/Button'

/** Trouble in one page: the navigation stays, and nothing that was kept on the device is touched. */
export default function PageError({
  error,
  reset,
}: {
  error: Error & { digest?: string }
  reset: () => void
}) {
  return (
    <Empty
      page
      what="This page could not be shown"
      why={`Something went wrong in the program. What you had entered is kept on this device. ${
        error.digest ? `Tell whoever looks after it this number: ${error.digest}.` : ''
      }`}
      todo={<Button onClick={reset}>Try again</Button>}
    />
  )
}
