import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { Comparison, Judgement } from '@/lib/core/reading'
import { DataTable } from '../ui/paper/DataTable'
import { Quiet } from '../ui/words/Quiet'

const partWords = {
  instrument: 'Gauge accuracy',
  resolution: 'Last digit of the gauge',
  repeatability: 'How much repeats scatter',
  tolerance: 'Tolerance of the switch',
} as const

/** Where the uncertainty comes from and what was taken for granted. Folded away: it is for whoever doubts. */
export function Budget({ comparison, unit }: { comparison: Comparison; unit: PressureUnit }) {
  const judgement = comparison.run ?? comparison.start
  return (
    <details>
      <summary>What the verdict rests on</summary>
      {judgement !== undefined && <BudgetTable judgement={judgement} unit={unit} />}
      {comparison.assumed.length > 0 && (
        <>
          <h3>Taken for granted</h3>
          <ul>
            {comparison.assumed.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </details>
  )
}

function BudgetTable({ judgement, unit }: { judgement: Judgement; unit: PressureUnit }) {
  const figure = (pascals: number) => formatPressure(pascals, unit, unit === 'Pa' ? 1 : 3)
  const rows = (Object.keys(partWords) as (keyof typeof partWords)[]).map((part) => ({
    part: partWords[part],
    pascals: judgement.budget[part],
  }))
  return (
    <>
      <DataTable
        caption="Standard uncertainties"
        rows={[...rows, { part: 'All of them together', pascals: judgement.standardUncertaintyPascals }]}
        rowKey={(row) => row.part}
        columns={[
          { key: 'part', words: 'From', cell: (row) => row.part },
          {
            key: 'pascals',
            words: 'As a standard uncertainty',
            numeric: true,
            cell: (row) => figure(row.pascals),
          },
        ]}
        empty={<p>No uncertainty was worked out.</p>}
      />
      <p>
        The gauge may be off by ± {figure(judgement.gaugeHalfWidthPascals)} at this reading.{' '}
        {judgement.clearsWorstCase
          ? 'Even with gauge and tolerance both as wrong as they may be, it clears the limit.'
          : 'With gauge and tolerance both as wrong as they may be, it does not clear the limit.'}
      </p>
      <Quiet>
        Combined as the Guide to the Expression of Uncertainty in Measurement (JCGM 100) does; the chance as
        in JCGM 106, with a normal distribution. Where the tolerance is the largest part, that is an
        approximation.
      </Quiet>
    </>
  )
}
