'use client'

import { useState } from 'react'
import type { HelperRecord } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { DataTable } from '../ui/paper/DataTable'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { Figure } from './Figure'
import { chanceOfLoss, countOf, howMany, shareOf } from './figureWords'
import { OpenedCases } from './OpenedCases'
import { type Forecaster, forecasters, type Opened, opened } from './openedCases'

const ways = Object.keys(forecasters) as Forecaster[]

/** The record in short, and the same cases by two ways that look at nothing. */
export function ThreeWays({ record, file }: { record: HelperRecord; file: TeamFile }) {
  const [open, setOpen] = useState<Opened>()
  const { helper, forecasts } = record
  const behind = (whose: Forecaster, places: 1 | 3): Opened => {
    const where = places === 1 ? 'the true cause first' : 'the true cause among the first three'
    return opened(`${whose} ${places}`, `${forecasters[whose]}: ${where}`, forecasts, [whose, places])
  }
  const figure = (whose: Forecaster, places: 1 | 3) => {
    const of = behind(whose, places)
    return (
      <>
        <Figure of={of} isOpen={open?.key === of.key} onOpen={setOpen} />
        <Quiet>{shareOf(places === 1 ? record[whose].top1 : record[whose].top3)}</Quiet>
      </>
    )
  }
  return (
    <Sheet title="In short">
      <p>
        In the last {helper.cases === 1 ? 'case' : `${helper.cases} cases`} the helper named the true cause
        first in {countOf(helper.top1)}, and among its first three in {countOf(helper.top3)}.{' '}
        {isClearlyBetter(record)
          ? 'That is clearly more than the base rates alone or a fixed checklist can do.'
          : 'That is no clear gain over the base rates alone or a fixed checklist yet.'}
      </p>
      <Quiet>{howMany(helper.cases)}</Quiet>
      <DataTable
        caption="The same cases, three ways"
        rowKey={(whose) => whose}
        rows={ways}
        columns={[
          { key: 'way', words: 'Way', cell: (whose) => forecasters[whose] },
          { key: 'first', words: 'True cause first', cell: (whose) => figure(whose, 1) },
          { key: 'three', words: 'Among the first three', cell: (whose) => figure(whose, 3) },
        ]}
        empty={null}
      />
      {open && <OpenedCases opened={open} file={file} />}
      <Quiet>
        The base rates alone know how often each cause was met, and look at nothing. The fixed checklist goes
        through the causes in the order of the work.
      </Quiet>
      <DataTable
        caption="What it staked on the true cause"
        rowKey={(whose) => whose}
        rows={ways}
        columns={[
          { key: 'way', words: 'Way', cell: (whose) => forecasters[whose] },
          { key: 'loss', words: 'Loss', numeric: true, cell: (whose) => record[whose].logLoss.toFixed(2) },
          {
            key: 'chance',
            words: 'As a chance',
            numeric: true,
            cell: (whose) => chanceOfLoss(record[whose].logLoss),
          },
        ]}
        empty={null}
      />
      <Quiet>
        The loss is charged for every case: little where the true cause had been given a high chance, much
        where it had been all but ruled out. The smaller the better. As a chance it is what the true cause was
        given on the whole (the geometric mean).
      </Quiet>
    </Sheet>
  )
}

/** Two standard errors of the difference, taken as if the losses were independent: rather too wide than too narrow. */
const isClearlyBetter = ({ helper, baseRates, checklist }: HelperRecord): boolean =>
  [baseRates, checklist].every(
    (other) =>
      other.logLoss - helper.logLoss >
        2 * Math.hypot(other.logLossStandardError, helper.logLossStandardError) &&
      other.top3.hits < helper.top3.hits,
  )
