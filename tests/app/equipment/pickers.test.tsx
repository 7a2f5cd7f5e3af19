import { render, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { useState } from 'react'
import { expect, test, vi } from 'vitest'
import type { Candidate } from '@/app/equipment/candidates'
import { PositionsPicker } from '@/app/equipment/form/PositionsPicker'
import { RecordPicker } from '@/app/equipment/form/RecordPicker'
import { fill, tick } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

const parts: Candidate[] = Array.from({ length: 30 }, (_, at) => ({
  id: `part ${at}`,
  words: `OM-77${10 + at}`,
  hint: 'Factory part',
  texts: [`OM-77${10 + at}`],
}))

function Picker(props: { candidates: readonly Candidate[]; like?: string; offered?: string[] }) {
  const [typed, setTyped] = useState('')
  const [picked, setPicked] = useState('')
  return (
    <RecordPicker
      legend="Which part?"
      name="part"
      findBy="part number"
      none="None of these"
      {...props}
      typed={typed}
      onType={setTyped}
      picked={picked}
      onPick={setPicked}
    />
  )
}

const offered = () =>
  within(screen.getByRole('group', { name: 'Which part?' }))
    .getAllByRole<HTMLInputElement>('radio')
    .map((radio) => radio.value)
const chosen = () => screen.getByRole<HTMLInputElement>('radio', { checked: true }).value

test('RecordPicker shows a short list whole, and a long one as it is looked for', () => {
  const { rerender } = render(<Picker candidates={parts.slice(0, 5)} />)
  expect(offered()).toHaveLength(1 + 5)
  expect(screen.queryByRole('textbox')).toBeNull()
  rerender(<Picker candidates={parts} />)
  expect(offered()).toHaveLength(1 + 7)
  fill('Which part: look for it by part number', 'om 772I')
  expect(offered()[1]).toBe('part 11')
})

test('RecordPicker keeps what is picked in sight whatever is looked for next', async () => {
  render(<Picker candidates={parts} like="OM-7721" />)
  expect(offered()[1]).toBe('part 11')
  expect(chosen()).toBe('')
  await userEvent.setup().click(screen.getByRole('radio', { name: /^OM-7721/ }))
  fill('Which part: look for it by part number', 'OM-7735')
  expect(chosen()).toBe('part 11')
  expect(offered()).toContain('part 25')
})

test('Enter picks what is found alone, and never sends the form around it', async () => {
  const send = vi.fn((event: { preventDefault: () => void }) => event.preventDefault())
  const { container } = render(
    <form onSubmit={send}>
      <Picker candidates={[...parts, { id: 'other', words: 'ZK-9004', texts: ['ZK-9004'] }]} />
    </form>,
  )
  await userEvent.setup().type(screen.getByRole('textbox'), 'zk9004{Enter}')
  expect(chosen()).toBe('other')
  expect(send).not.toHaveBeenCalled()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('RecordPicker says so when nothing matches', () => {
  render(<Picker candidates={parts} />)
  fill('Which part: look for it by part number', 'qqqq')
  expect(screen.getByText('Nothing on file matches “qqqq”.')).toBeTruthy()
})

function Positions({ onPick }: { onPick: (ids: string[]) => void }) {
  const [typed, setTyped] = useState('')
  const [picked, setPicked] = useState<string[]>([])
  return (
    <PositionsPicker
      legend="For which switch positions?"
      hint="Only those that the maker lists."
      candidates={parts}
      typed={typed}
      onType={setTyped}
      picked={picked}
      onPick={(ids) => {
        setPicked(ids)
        onPick(ids)
      }}
    />
  )
}

test('PositionsPicker keeps every tick in sight, and gives the ids in the order of ticking', () => {
  const pick = vi.fn()
  render(<Positions onPick={pick} />)
  const look = 'Look for a position by model, maker, range or part number'
  fill(look, 'OM-7735')
  tick('OM-7735')
  fill(look, 'OM-7712')
  tick('OM-7712')
  expect(pick).toHaveBeenLastCalledWith(['part 25', 'part 2'])
  expect(screen.getAllByRole('checkbox', { checked: true })).toHaveLength(2)
  tick('OM-7735')
  expect(pick).toHaveBeenLastCalledWith(['part 2'])
})

test('RecordPicker that offers a few shows no other before it is looked for', () => {
  render(<Picker candidates={parts.slice(0, 5)} offered={['part 3']} />)
  expect(offered()).toEqual(['', 'part 3'])
  fill('Which part: look for it by part number', 'OM-7710')
  expect(offered()[1]).toBe('part 0')
})
