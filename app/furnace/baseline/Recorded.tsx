'use client'

import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import { combined, uncertaintyBudget, usualReadingSettings } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { gaugeThen } from '@/lib/records/view/case/gaugeThen'
import { instrumentOf } from '@/lib/records/view/case/instrument'
import { Button, ButtonLink } from '../../ui/form/Button'
import { Beside } from '../../ui/paper/Beside'
import { Sheet } from '../../ui/paper/Sheet'
import { Row } from '../../ui/paper/Stack'
import { WaterColumn } from '../../ui/waterColumn/WaterColumn'
import { sayDate } from '../../ui/words/sayDate'
import { BaselineTable } from './BaselineTable'
import { type BaselineLine, baselinePascals, baselinesOf } from './baselinesOf'

type Props = {
  furnaceId: string
  /** The baseline that was recorded just now. */
  baselineId: string
  file: TeamFile
  unit: PressureUnit
  names: ReadonlyMap<string, string>
  onNext: () => void
}

/** Shows a baseline back, with the earlier ones of the same switch in the same phase beside it. */
export function Recorded({ furnaceId, baselineId, file, unit, names, onNext }: Props) {
  const lines = baselinesOf(file, furnaceId)
  const line = lines.find(({ baseline }) => baseline.id === baselineId)
  if (line === undefined) return null
  const like = lines.filter((other) => isLike(other, line))
  const earlier = like.filter((other) => other !== line)
  return (
    <Sheet
      title="Recorded"
      foot={
        <Row>
          <Button kind="main" onClick={onNext}>
            Record the next one
          </Button>
          <ButtonLink href={`/furnace?id=${furnaceId}`}>Back to the furnace</ButtonLink>
        </Row>
      }
    >
      <Beside
        picture={
          <WaterColumn
            unit={unit}
            sense={line.reading.body.sense}
            marks={[]}
            reading={{ pascals: baselinePascals(line), uncertaintyPascals: uncertaintyOf(line, file) }}
            earlier={earlier.map((other) => ({ pascals: baselinePascals(other) }))}
          />
        }
      >
        <p role="status">
          <b>{formatPressure(baselinePascals(line), unit)}</b>, {line.reading.body.phase}, on{' '}
          {sayDate(line.baseline.body.on)}.{' '}
          {earlier.length === 0
            ? 'It is the first baseline of this switch in this phase.'
            : `${earlier.length === 1 ? 'One earlier baseline' : `${earlier.length} earlier baselines`} of this switch in this phase, fainter.`}
        </p>
      </Beside>
      <BaselineTable
        caption="This switch in this phase"
        lines={like}
        {...{ file, unit, names }}
        empty={<p>None is on record.</p>}
      />
    </Sheet>
  )
}

const isLike = ({ reading: { body: one } }: BaselineLine, { reading: { body: other } }: BaselineLine) =>
  one.positionId === other.positionId && one.phase === other.phase && one.stage === other.stage

/** How far the reading itself may be off: the gauge, its last digit, and how much repeats usually scatter. */
function uncertaintyOf(line: BaselineLine, file: TeamFile): number {
  const { gaugeId, zeroed } = line.reading.body
  const gauge = gaugeThen(file, gaugeId, line.reading.at)
  const scatter = usualReadingSettings.usualScatterPascals
  return gauge === undefined
    ? scatter
    : combined(uncertaintyBudget(instrumentOf(gauge.body, zeroed), baselinePascals(line), scatter, 0))
}
