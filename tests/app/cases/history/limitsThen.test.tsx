import { render } from '@testing-library/react'
import { expect, test } from 'vitest'
import { LimitsThen } from '@/app/cases/history/LimitsThen'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { hot, ids, team } from '../../../records/view/case/team'

const against = (action: 'closes' | 'not stated'): ReadingBody['against'] => [
  { action, pascals: 92.16, limit: 'nominal', level: 'Unverified', sources: ['distributor'], reportIds: [] },
]

test.each([
  ['closes', 'That day it closes at 0.37 in. w.c., Unverified: '],
  ['not stated', 'That day its action was not stated, its value 0.37 in. w.c., Unverified: '],
] as const)('a limit of that day whose action is %s reads as a sentence', (action, words) => {
  const file = team(hot(0.7))
  const [reading] = file.readings.values()
  const body = { ...reading!.body, positionId: ids.low, against: against(action) }
  const { container } = render(
    <LimitsThen body={body} at={reading!.at} file={file} names={new Map()} unit="inH2O" />,
  )
  expect(container.textContent).toContain(words)
})
