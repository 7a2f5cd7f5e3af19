import { screen } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { useAdd } from '@/app/device/useAdd'
import { deviceId } from '@/app/device/whoIsHere'
import { sampleIds as ids, sampleRecords } from '../../records/samples'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { press } from '../setup/hands'

const hourMs = 3_600_000
const bodyOf = (id: string) => sampleRecords.find((record) => record.id === id)!.body
const endedAt = Date.parse(sampleRecords.find(({ id }) => id === ids.ending)!.saidAt)

/** Says a finding of a visit that has ended. */
function Late() {
  const { add, trouble } = useAdd()
  return (
    <>
      <p role="alert">{trouble?.refusal?.sentence}</p>
      <button type="button" onClick={() => void add([{ kind: 'finding', body: bodyOf(ids.finding) }])}>
        Say it
      </button>
    </>
  )
}

beforeEach(() => {
  // Five minutes after the visit ended; the phone is two hours behind.
  vi.useFakeTimers({ toFake: ['Date'], now: endedAt + 5 * 60_000 - 2 * hourMs })
})
afterEach(() => vi.useRealTimers())

test('a phone with a slow clock is told at the form what the server would refuse, once its clock was measured', async () => {
  const [sent] = held([['01920000-0000-7000-8000-0000000000aa', 'maker', { name: 'Orrinmoor' }]])
  const measured = { ...sent!, seq: 900, device: deviceId(localStorage), clockShiftMs: 2 * hourMs }
  const device = fakeDevice({ records: [...sampleRecords, measured] })
  renderOn(device, <Late />)
  await press('Say it')
  expect(screen.getByRole('alert').textContent).toMatch(/^This visit had ended when it was said\./)
  expect(device.added).toEqual([])
})

test('a clock that was never measured is taken as right: the server has the last word', async () => {
  const device = fakeDevice({ records: sampleRecords })
  renderOn(device, <Late />)
  await press('Say it')
  expect(device.added.map(({ kind }) => kind)).toEqual(['finding'])
})
