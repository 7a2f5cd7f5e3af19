import { expect, test } from 'vitest'
import type { Column } from '@/app/ui/waterColumn/column'
import { columnLabels } from '@/app/ui/waterColumn/columnLabels'
import { describeColumn } from '@/app/ui/waterColumn/describeColumn'

const inch = 249.08891 // NIST SP 811 (2008), App. B.8
const column = Object.freeze<Column>({
  unit: 'inH2O',
  sense: 'suction',
  marks: [
    {
      action: 'closes',
      pascals: 0.58 * inch,
      toleranceAbove: 0.05 * inch,
      toleranceBelow: 0.05 * inch,
      limit: 'nominal',
      standing: { level: 'Verified', asOf: '2026-01-12' },
    },
    {
      action: 'opens',
      pascals: 0.42 * inch,
      limit: 'minimum',
      standing: { level: 'Unverified', asOf: '2026-01-09T18:30:00-07:00' },
    },
  ],
  reading: { pascals: 0.44 * inch, uncertaintyPascals: 0.02 * inch },
  earlier: [{ pascals: 0.39 * inch }, { pascals: 0.41 * inch }],
})

test('describeColumn tells all that the drawing shows, each number with its level and date', () => {
  expect(describeColumn(column)).toBe(
    'Water column, suction. Closes at 0.58 in. w.c. ± 0.05, Verified, 12 Jan 2026. ' +
      'Opens at 0.42 in. w.c. minimum, Unverified, 9 Jan 2026. ' +
      'Reading 0.44 in. w.c., give or take 0.02. Earlier: 0.39, 0.41.',
  )
})

test('describeColumn says of a point that is not saved yet how it would stand, and names no date', () => {
  const [mark] = column.marks
  expect(describeColumn({ ...column, marks: [{ ...mark!, onceSaved: true }] })).toContain(
    'Closes at 0.58 in. w.c. ± 0.05, not saved yet: would stand as Verified. Reading',
  )
})

test('columnLabels draws “would be” before the level of a point that is not saved yet', () => {
  const [mark] = column.marks
  expect(columnLabels({ ...column, marks: [{ ...mark!, onceSaved: true }] })[0]?.lines).toEqual([
    'closes',
    'would be',
    'Verified',
  ])
  expect(columnLabels(column)[0]?.lines).toEqual(['closes', 'Verified'])
})

test('describeColumn says it in the reader’s unit', () => {
  expect(describeColumn({ ...column, unit: 'Pa', earlier: [] })).toContain('Closes at 144 Pa ± 12')
})

test('describeColumn says that the action or the sense is not stated', () => {
  const marks = column.marks.slice(0, 1).map((mark) => ({ ...mark, action: 'not stated' as const }))
  const words = describeColumn({ unit: 'inH2O', sense: 'not stated', marks })
  expect(words).toMatch(/^Water column, sense not stated\. Action not stated, at 0\.58/)
})

test('describeColumn of an empty column names the picture only', () => {
  expect(describeColumn({ unit: 'Pa', sense: 'pressure', marks: [] })).toBe(
    'Water column, positive pressure.',
  )
})
