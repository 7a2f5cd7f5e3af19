'use client'

import { useMemo } from 'react'
import { settlement } from '@/lib/records/kinds/settlement'
import { byNeed } from '@/lib/records/view/desk/need'
import { openQuestions } from '@/lib/records/view/desk/questions'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { AnsweredSection } from './AnsweredSection'
import { DisputesSection } from './DisputesSection'
import { NotReachedSection } from './NotReachedSection'
import { OrganisationsSection } from './OrganisationsSection'
import { QuestionSheet } from './QuestionSheet'
import { RemindersSection } from './RemindersSection'
import { useNow } from './useNow'
import { WorthVerifyingSection } from './WorthVerifyingSection'

/** The ratings that somebody in a basement is waiting for, and what a call can do about them. */
export function PhoneDeskScreen() {
  const { file, me } = useDeviceState()
  const now = useNow()
  const questions = useMemo(() => byNeed(file, openQuestions(file)), [file])
  const keepsTheFile = settlement.mayAdd.includes(me.role)
  return (
    <Stack>
      <PageHeader
        title="Phone desk"
        lead="Ratings that are asked for and not on file yet, the most needed first."
        actions={<ButtonLink href="/ask">Ask for a rating</ButtonLink>}
      />
      <RemindersSection now={now} />
      <NotReachedSection now={now} />
      {questions.length === 0 && (
        <Empty
          what="Nobody is waiting for a rating"
          why="Every question from the field has its answer on file."
          todo={<a href="/">Find a setpoint whose level could be better</a>}
        />
      )}
      {questions.map((question) => (
        <QuestionSheet key={question.lead.id} question={question} now={now} />
      ))}
      <AnsweredSection />
      {keepsTheFile && <DisputesSection />}
      {keepsTheFile && <WorthVerifyingSection now={now} />}
      {keepsTheFile && <OrganisationsSection now={now} />}
    </Stack>
  )
}
