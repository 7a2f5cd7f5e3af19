import type { RecordEnvelope } from '@/lib/records/envelope'
import type { RepairBody } from '@/lib/records/kinds/repair'
import type { WarrantyAnswerBody } from '@/lib/records/kinds/warrantyAnswer'
import { demoDay } from '../../book'
import { workingDayAfter } from '../../drawing'
import { type DistributorKey, distributors } from '../../names'
import type { Team } from '../../team'

type Swap = { id: string; body: RepairBody }
type Answered = {
  by: 'piet' | 'dunja'
  distributor: DistributorKey
  daysLater: number
} & Omit<WarrantyAnswerBody, 'repairId' | 'partReturned' | 'organisationId' | 'on'>

const usd = (amountMinorUnits: number) => ({ amountMinorUnits, currency: 'USD' })

/** What was answered about other switches that went back, by how many were replaced since. */
const drawn: readonly (readonly [place: number, answers: readonly Answered[]])[] = [
  [
    2,
    [
      {
        by: 'dunja',
        distributor: 'ridge',
        daysLater: 16,
        outcome: 'denied',
        ...usd(12650),
        reasonGiven: 'Tested good at the maker’s. No reading came with it.',
        reference: 'RET 4471',
      },
    ],
  ],
  [0, [{ by: 'piet', distributor: 'quarl', daysLater: 9, outcome: 'credited', ...usd(9890) }]],
  [
    1,
    [
      {
        by: 'piet',
        distributor: 'vennet',
        daysLater: 12,
        outcome: 'denied',
        reasonGiven: 'Out of its year.',
        answeredBy: 'Returns desk',
      },
      {
        by: 'piet',
        distributor: 'vennet',
        daysLater: 33,
        outcome: 'credited',
        ...usd(10475),
        reasonGiven: 'The date on the part was inside the year after all.',
        reference: 'V-2088',
      },
    ],
  ],
  [
    3,
    [
      {
        by: 'dunja',
        distributor: 'ridge',
        daysLater: 4,
        outcome: 'waiting',
        ...usd(11820),
        note: 'Box went with the Thursday van.',
      },
    ],
  ],
]

/** What distributors answered about switches that went back, with the evidence and without. */
export function tellWarranty(team: Team): void {
  const records = team.records()
  const withdrawn = new Set(records.flatMap(({ kind, body }) => (kind === 'withdrawal' ? [body.record] : [])))
  const swaps = records.filter((record) => isSwap(record) && !withdrawn.has(record.id)) as unknown as Swap[]
  const guilty = swaps.find(({ body }) => body.furnaceId === team.furnaceId('Heron Wharf 2, upstairs'))
  if (guilty === undefined) throw new RangeError('The demo’s guilty switch was not replaced')
  const say = (swap: Swap, answers: readonly Answered[]) => {
    for (const answer of answers) tellAnswer(team, records, swap, answer)
  }
  say(guilty, [
    {
      by: 'piet',
      distributor: 'quarl',
      daysLater: 2,
      outcome: 'waiting',
      ...usd(13200),
      reference: 'Q 31-118',
    },
    {
      by: 'piet',
      distributor: 'quarl',
      daysLater: 24,
      outcome: 'denied',
      ...usd(13200),
      answeredBy: 'Jorun, returns',
      reasonGiven: '“Switches are never the fault.”',
      reference: 'Q 31-118',
      note: 'Sent them the readings and the pump. They want a form.',
    },
  ])
  const lastFirst = swaps.filter((swap) => swap !== guilty && swap.body.on < '2026-10-01').toReversed()
  for (const [place, answers] of drawn) {
    const swap = lastFirst[place]
    if (swap === undefined) throw new RangeError(`The demo replaced no ${place + 1} other switches`)
    say(swap, answers)
  }
}

const isSwap = ({ kind, body }: RecordEnvelope): boolean =>
  kind === 'repair' && body.switchReplaced === true && body.fittedPart !== undefined

function tellAnswer(team: Team, records: readonly RecordEnvelope[], swap: Swap, answer: Answered): void {
  const { by, distributor, daysLater, ...said } = answer
  const organisation = records.find(
    ({ kind, body }) => kind === 'organisation' && body.name === distributors[distributor],
  )
  const part = records.find(({ id }) => id === swap.body.fittedPart)
  const on = workingDayAfter(swap.body.on, daysLater, demoDay)
  const body = {
    repairId: swap.id,
    // The same number went back as came: what came out was the factory switch.
    partReturned: part?.body.partNumber,
    organisationId: organisation?.id,
    on,
    ...said,
  }
  team.say({ kind: 'warranty answer', by, on, body })
}
