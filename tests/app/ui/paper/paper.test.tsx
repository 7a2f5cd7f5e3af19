import { render, screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { Empty } from '@/app/ui/answers/Empty'
import { Problem } from '@/app/ui/answers/Problem'
import { Refusal } from '@/app/ui/answers/Refusal'
import { Beside } from '@/app/ui/paper/Beside'
import { DataTable } from '@/app/ui/paper/DataTable'
import { Facts } from '@/app/ui/paper/Facts'
import { PageHeader } from '@/app/ui/paper/PageHeader'
import { Sheet } from '@/app/ui/paper/Sheet'
import { accessibilityFaults } from '../accessibilityFaults'

const calls = [
  { asked: 'Distributor', minutes: 14 },
  { asked: 'Factory technical support', minutes: 9 },
]
const columns = [
  { key: 'asked', words: 'Asked', cell: (call: (typeof calls)[number]) => call.asked },
  { key: 'minutes', words: 'Minutes', cell: (call: (typeof calls)[number]) => call.minutes, numeric: true },
]
const nothing = <Empty what="No calls yet" why="Nobody has called." todo={<a href="/phone-desk">Call</a>} />

test('Sheet is an article named by its title', async () => {
  const { container } = render(
    <>
      <PageHeader title="Furnace" lead="One furnace" above={<a href="/">Find</a>} />
      <Sheet title="Low fire" sub="Part" foot={<a href="/compare">Compare</a>}>
        <Facts facts={[{ key: 'stage', name: 'Stage', value: 'Low fire' }]} />
        <Beside picture={<i>picture</i>} below={<p>below</p>}>
          words
        </Beside>
      </Sheet>
    </>,
  )
  expect(screen.getByRole('article', { name: 'Low fire' })).toBeTruthy()
  expect(screen.getByRole('heading', { level: 1, name: 'Furnace' })).toBeTruthy()
  expect(screen.getByRole('term').textContent).toBe('Stage')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('DataTable is named by its caption, and its first column names the rows', async () => {
  const { container } = render(
    <DataTable
      caption="Calls"
      columns={columns}
      rows={calls}
      rowKey={({ asked }) => asked}
      empty={nothing}
    />,
  )
  expect(screen.getByRole('table', { name: 'Calls' })).toBeTruthy()
  expect(screen.getByRole('rowheader', { name: 'Distributor' })).toBeTruthy()
  expect(screen.getAllByRole('columnheader').map((head) => head.textContent)).toEqual(['Asked', 'Minutes'])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('DataTable without rows says what, why, and what to do', () => {
  render(
    <DataTable caption="Calls" columns={columns} rows={[]} rowKey={({ asked }) => asked} empty={nothing} />,
  )
  expect(screen.queryByRole('table')).toBeNull()
  expect(screen.getByText('No calls yet')).toBeTruthy()
  expect(screen.getByText('Nobody has called.')).toBeTruthy()
  expect(screen.getByRole('link', { name: 'Call' })).toBeTruthy()
})

test('Refusal names its rule, says why, and says what to do instead', async () => {
  const { container } = render(
    <Refusal
      title="Not this one"
      rule="Factory parts only"
      why="It could be set below the safe flow"
      instead="Record it as found"
    />,
  )
  expect(screen.getByRole('alert').textContent).toBe(
    'Not this oneThe ruleFactory parts onlyWhyIt could be set below the safe flowInsteadRecord it as found',
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('Problem is read out when there is one, and is nothing otherwise', () => {
  const { container, rerender } = render(<Problem>Two numbers stand here.</Problem>)
  expect(screen.getByRole('alert').textContent).toBe('Two numbers stand here.')
  rerender(<Problem />)
  expect(container.innerHTML).toBe('')
})
