import type { Metadata } from 'next'
import { DangerSteps } from '../ui/danger/DangerSteps'
import { PageHeader } from '../ui/paper/PageHeader'

export const metadata: Metadata = { title: 'Danger sheet' }

/** The danger sheet as a page of its own: it is kept on the device and works with no script at all. */
export default function DangerPage() {
  return (
    <>
      <PageHeader title="Danger sheet" />
      <DangerSteps />
    </>
  )
}
