'use client'

import { useMemo } from 'react'
import { wilsonInterval } from '@/lib/core/wilsonInterval'
import type { Organisation } from '@/lib/records/view/desk/organisations'
import { organisationsIn } from '@/lib/records/view/desk/organisations'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { actionWords } from '../ui/words/actionWords'
import { Quiet } from '../ui/words/Quiet'
import { callLine } from './callWords'

/** Below this many answers that were judged later, a share says next to nothing. Common practice, no published source. */
const fewAnswers = 10

/** Whom we ring, what became of it, and how often their answers were right later. */
export function OrganisationsSection({ now }: { now: string }) {
  const { file, names } = useDeviceState()
  const day = now.slice(0, 10)
  const organisations = useMemo(() => organisationsIn(file, ratingSettings(file, day)), [file, day])
  return (
    <section aria-labelledby="organisations">
      <Stack>
        <h2 id="organisations">Whom we ring</h2>
        <p>
          <a href="/sources">What settled disputes taught of each source</a>
        </p>
        {organisations.length > 0 && (
          <Quiet>The numbers of one call are one answer: right later only if all of them were.</Quiet>
        )}
        {organisations.length === 0 && (
          <Empty
            what="No organisation is on file yet"
            why="Distributors and makers’ technical lines are kept with their numbers and answers once somebody rings them."
            todo="Ring about a question: the organisation is added with the call."
          />
        )}
        {organisations.map((organisation) => (
          <Sheet
            key={organisation.entry.id}
            heading={3}
            title={organisation.entry.body.name}
            sub={[
              organisation.entry.body.source === 'distributor' ? 'Distributor' : 'Maker’s technical line',
              organisation.entry.body.number,
            ]
              .filter(Boolean)
              .join(' · ')}
          >
            <Stack>
              <p>{laterWords(organisation)}</p>
              <details>
                <summary>
                  {organisation.calls.length === 1 ? '1 call' : `${organisation.calls.length} calls`},{' '}
                  {organisation.answers.length === 1 ? '1 answer' : `${organisation.answers.length} answers`}
                </summary>
                <ul>
                  {organisation.calls.map((call) => (
                    <li key={call.id}>
                      <a href={`/record?id=${call.id}`}>{callLine(file, names, call)}</a>
                    </li>
                  ))}
                  {organisation.answers
                    .flatMap(({ parts }) => parts)
                    .map(({ report, later }) => (
                      <li key={report.id}>
                        <a href={`/record?id=${report.id}`}>
                          Answer for {file.positions.get(file.keptId(report.body.positionId))?.body.name},{' '}
                          {actionWords[report.body.action].name.toLowerCase()}
                        </a>{' '}
                        <Quiet inline>
                          {later === 'not judged' ? 'not judged by others yet' : `later ${later}`}
                        </Quiet>
                      </li>
                    ))}
                </ul>
              </details>
            </Stack>
          </Sheet>
        ))}
      </Stack>
    </section>
  )
}

/** How often an organisation was right later, with how little that says. */
export function laterWords({ answers }: Pick<Organisation, 'answers'>): string {
  const judged = answers.filter(({ later }) => later !== 'not judged')
  const right = judged.filter(({ later }) => later === 'right').length
  const open = answers.length - judged.length
  const rest = open === 0 ? '' : ` ${open} not judged by others yet.`
  if (judged.length === 0) return `No answer of theirs was judged by others yet.${rest}`
  const [low, high] = wilsonInterval(right, judged.length, 0.95).map((share) => Math.round(share * 100))
  const few = judged.length < fewAnswers ? ' Few answers: this says little.' : ''
  return `${right} of ${judged.length} answers were right later (95 % interval ${low} to ${high} %).${few}${rest}`
}
