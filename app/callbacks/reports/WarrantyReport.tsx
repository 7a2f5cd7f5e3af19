'use client'

import { requirementText } from '@/lib/core/guard/requirement'
import { amountWords } from '@/lib/core/money'
import type {
  AnsweredPart,
  OutcomeCount,
  WarrantyReport as Worked,
} from '@/lib/records/view/reports/warrantyReport'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { DataTable } from '../../ui/paper/DataTable'
import { type Fact, Facts } from '../../ui/paper/Facts'
import { Sheet } from '../../ui/paper/Sheet'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { WarrantyOfRepair } from '../../warranty/WarrantyAnswers'
import { amountOf, outcomeWords } from '../../warranty/warrantyForm'
import { complaintWords, readingWords } from '../swaps/swapWords'
import { Report } from './Report'
import styles from './reports.module.css'

/** What came back for parts that went back, beside what was on record for them. */
export function WarrantyReport({ warranty }: { warranty: Worked }) {
  const { counts, open, deniedWithNothingMissing } = warranty
  const answered = counts.some(({ count }) => count > 0)
  return (
    <Report
      title="Warranty credit denied"
      means="What distributors and makers answered about parts that went back, by the day of the answer; the newest answer about a part counts. Denied and waiting ones stand beside what was on record: before the repair as it stood just before the repair was recorded, the rest as it stood when the answer was. Amounts of different currencies are never added."
    >
      <DataTable
        caption="Answers"
        rows={answered ? counts : []}
        rowKey={({ outcome }) => outcome}
        columns={[
          { key: 'outcome', words: 'Answer', cell: ({ outcome }) => outcomeWords[outcome] },
          { key: 'count', words: 'Parts', numeric: true, cell: ({ count }) => count },
          { key: 'sum', words: 'Amount', numeric: true, cell: sumWords },
        ]}
        empty={
          <Empty
            what="No warranty answer in this period"
            why="Nobody has recorded what was credited or denied for a part that went back."
            todo={
              <a href="/cases">Open the case of a replaced part, and record the answer from its history</a>
            }
          />
        }
      />
      {open.some(({ answer }) => answer.body.outcome === 'denied') && (
        <p>Denied, although nothing was missing that a replacement asks for: {deniedWithNothingMissing}.</p>
      )}
      {open.map((part) => (
        <OpenAnswer key={part.answer.id} part={part} />
      ))}
    </Report>
  )
}

function sumWords({ count, sums, withoutAmount }: OutcomeCount): string {
  if (count === 0) return 'none'
  return [
    ...sums.map(([currency, minorUnits]) => amountWords(minorUnits, currency)),
    ...(withoutAmount === 0 ? [] : [`${withoutAmount} without an amount`]),
  ].join(', ')
}

function OpenAnswer({ part: { answer, repair, furnace, evidence, swap } }: { part: AnsweredPart }) {
  const { file } = useDeviceState()
  const { body } = answer
  const { caseId } = repair.body
  const organisation =
    body.organisationId === undefined ? undefined : file.organisations.get(file.keptId(body.organisationId))
  const who = [organisation?.body.name, body.answeredBy].filter((name) => name !== undefined).join(', ')
  const { readingsBefore, contactSeenOpen, checkedOffTheFurnace, readAfterwards } = evidence
  return (
    <Sheet
      heading={3}
      title={
        <a href={caseId === undefined ? `/record?id=${repair.id}` : `/case/history?id=${caseId}`}>
          {furnace.body.siteLabel}
        </a>
      }
      sub={furnace.body.model}
    >
      <div className={styles.answered}>
        <Facts
          facts={[
            fact(
              'answer',
              'Answer',
              <a href={`/record?id=${answer.id}`}>
                {outcomeWords[body.outcome]}, {sayDate(body.on)}
              </a>,
            ),
            fact('amount', 'Amount', amountOf(body) ?? 'none on record'),
            fact('part', 'Part that went back', <AsPrinted text={body.partReturned} />),
            fact('who', 'Whose answer', who),
            fact('reason', 'Reason given', body.reasonGiven ?? 'none on record'),
            fact('repair', 'Came out', `${sayDate(repair.body.on)}: ${repair.body.done}`),
            fact(
              'before',
              'Readings before, with the rated points',
              readingsBefore === 0 ? 'None' : readingsBefore,
            ),
            ...(swap === undefined
              ? []
              : [fact('said', 'What the reading said', readingWords[swap.reading])]),
            fact('open', 'Contact seen open before', contactSeenOpen ? 'On record' : 'Not on record'),
            fact(
              'pump',
              'Switch checked off the furnace',
              checkedOffTheFurnace ? 'On record' : 'Not on record',
            ),
            fact('after', 'Reading after it', readAfterwards ? 'On record' : 'Not on record'),
          ]}
        />
        {swap !== undefined &&
          (swap.missing.length === 0 ? (
            <p>Nothing was missing that day of what is asked for {complaintWords[swap.complaint]}.</p>
          ) : (
            <div>
              <p>
                <b>Missing that day</b>, {swap.missing.length} of what is asked for{' '}
                {complaintWords[swap.complaint]}:
              </p>
              <ul>
                {swap.missing.map((each) => (
                  <li key={each}>{requirementText[each]}</li>
                ))}
              </ul>
            </div>
          ))}
        <WarrantyOfRepair repair={repair} back="/reports" />
      </div>
    </Sheet>
  )
}

const fact = (key: string, name: string, value: Fact['value']): Fact => ({ key, name, value })
