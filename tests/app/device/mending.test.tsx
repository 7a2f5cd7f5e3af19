import { screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { expect, test, vi } from 'vitest'
import { AskScreen } from '@/app/ask/AskScreen'
import { CallScreen } from '@/app/call/CallScreen'
import { useAdd } from '@/app/device/useAdd'
import { useDraft } from '@/app/device/useDraft'
import { AddPartScreen } from '@/app/equipment/AddPartScreen'
import { JoinScreen } from '@/app/equipment/JoinScreen'
import { AddFurnaceScreen } from '@/app/furnace/AddFurnaceScreen'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

function MakerForm({ name }: { name: string }) {
  const { add, trouble } = useAdd()
  const draft = useDraft(name, { name: '' })
  return (
    <>
      <p role="alert">{trouble?.refusal?.sentence}</p>
      <input
        aria-label={name}
        value={draft.value.name}
        onChange={(event) => draft.change({ name: event.target.value })}
      />
      <button
        type="button"
        onClick={async () => {
          if (await add([{ kind: 'maker', body: draft.value }])) await draft.done()
        }}
      >
        Add {name}
      </button>
    </>
  )
}

test('what is said is kept with its page and what was typed there, and with no form that nobody touched', async () => {
  history.replaceState(null, '', '/equipment/add-maker?back=1')
  const device = { ...fakeDevice(), addAll: vi.fn(async () => ['id']) }
  renderOn(
    device,
    <>
      <MakerForm name="one" />
      <MakerForm name="two" />
    </>,
  )
  await userEvent.type(screen.getByLabelText('one'), 'Orrinmoor')
  await press('Add one')
  const from = { address: '/equipment/add-maker?back=1', drafts: [['one', { name: 'Orrinmoor' }]] }
  expect(device.addAll).toHaveBeenLastCalledWith([{ kind: 'maker', body: { name: 'Orrinmoor' } }], {
    from,
    instead: undefined,
  })
})

test('on a page that was opened to mend a record, what is said comes in its place', async () => {
  history.replaceState(null, '', '/equipment/add-maker?back=1&mends=old')
  const device = {
    ...fakeDevice({ drafts: { one: { name: 'Orinmoor' } } }),
    addAll: vi.fn(async () => ['id']),
  }
  renderOn(device, <MakerForm name="one" />)
  expect(await screen.findByDisplayValue('Orinmoor')).toBeTruthy()
  await userEvent.type(screen.getByLabelText('one'), 'e')
  await press('Add one')
  expect(device.addAll).toHaveBeenLastCalledWith([{ kind: 'maker', body: { name: 'Orinmoore' } }], {
    from: { address: '/equipment/add-maker?back=1', drafts: [['one', { name: 'Orinmoore' }]] },
    instead: 'old',
  })
})

test.each([
  [
    new DOMException('full', 'QuotaExceededError'),
    /^This device has no room left, so nothing was recorded\./,
  ],
  [
    new Error('The store is closed'),
    /^This browser did not keep it, so nothing was recorded \(The store is closed\)\./,
  ],
])('where the browser does not take it, it says so, and what was typed stays: %s', async (cause, said) => {
  history.replaceState(null, '', '/equipment/add-maker')
  const device = { ...fakeDevice(), addAll: vi.fn(async () => Promise.reject(cause)) }
  renderOn(device, <MakerForm name="one" />)
  await userEvent.type(screen.getByLabelText('one'), 'Orrinmoor')
  await press('Add one')
  expect(screen.getByRole('alert').textContent).toMatch(said)
  expect(screen.getByDisplayValue('Orrinmoor')).toBeTruthy()
})

test.each([
  ['ask', AskScreen, 'ask', { printed: 'typed before' }],
  ['call', CallScreen, 'call', { person: 'typed before' }],
  ['furnace/add', AddFurnaceScreen, 'add furnace', { siteLabel: 'typed before' }],
  ['equipment/add-part', AddPartScreen, 'add part', { partNumber: 'typed before' }],
  ['equipment/join', JoinScreen, 'join', { reason: 'typed before' }],
])(
  'a form that keeps a draft for each address (%s) finds what was typed when it mends',
  async (path, Screen, form, typed) => {
    const request = '01920000-0000-7000-8000-0000000000c1'
    const asked = `model=ZZ-9947&kept=${ids.range}&request=${request}`
    const records = [
      ...equipmentRecords,
      ...held([[request, 'rating request', { printed: 'nothing', needs: [] }]]),
    ]
    openAt(`/${path}?${asked}&mends=old`)
    renderOn(fakeDevice({ records, drafts: { [`${form} ${asked}`]: typed } }), <Screen />)
    expect(await screen.findByDisplayValue('typed before')).toBeTruthy()
  },
)
