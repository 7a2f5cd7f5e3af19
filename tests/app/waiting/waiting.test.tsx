import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { WaitingScreen } from '@/app/waiting/WaitingScreen'
import type { Device, DeviceState } from '@/lib/device/device'
import type { OutboxItem } from '@/lib/device/outbox'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

const id = (end: string) => `01930000-0000-7000-8000-${end.padStart(12, '0')}`
const made = (end: string, kind: string, body: Record<string, unknown>): RecordEnvelope => ({
  id: id(end),
  kind,
  version: 1,
  body,
  saidAt: '2026-02-01T08:00:00.000Z',
  author: 'person-1',
  device: 'device-1',
})
const range = made('1', 'equipment range', {
  makerId: ids.maker,
  name: 'Tarn 4',
  modelPatterns: ['TN4-*'],
  fuel: 'either',
  heat: 'not stated',
})
const position = made('2', 'position', {
  rangeId: range.id,
  name: 'Low fire',
  stage: 'low fire',
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  sense: 'suction',
})
const request = made('3', 'rating request', { positionId: position.id, printed: 'nothing', needs: [] })
const refusal = { rule: 'who may add what', sentence: 'Ask a manager.' }

const item = (record: RecordEnvelope, at: number): OutboxItem => ({ record, order: at + 1 })

/** A device that holds these in its outbox; what waits is in its file as well, what was refused is not. */
function open(parts: {
  waiting?: RecordEnvelope[]
  refused?: RecordEnvelope[]
  freshAt?: string | undefined
  locked?: boolean
  saidAt?: OutboxItem['saidAt']
}): Device {
  const { waiting = [], refused = [] } = parts
  const device = fakeDevice({ records: [...equipmentRecords, ...waiting] })
  const state: DeviceState = {
    ...device.state(),
    waiting: waiting.map(item),
    refused: refused.map((record, at) => ({
      ...item(record, at),
      refusal,
      ...(parts.saidAt && { saidAt: parts.saidAt }),
    })),
    locked: parts.locked ?? false,
    ...('freshAt' in parts ? { freshAt: parts.freshAt } : {}),
  }
  const held = {
    ...device,
    state: () => state,
    dropRefused: vi.fn(async () => {}),
    mend: vi.fn(async () => undefined),
    sendAgain: vi.fn(async () => {}),
  }
  renderOn(held, <WaitingScreen />)
  return held
}
const sheet = (name: string) => screen.getByRole('article', { name })

test('a record that names a refused one says that it cannot go before it, and leads to it', async () => {
  open({ waiting: [position], refused: [range] })
  const waiting = sheet('Waiting: Switch position: Low fire')
  expect(waiting.textContent).toContain(
    'It cannot go before Furnace range: Tarn 4, which was refused. Deal with that one first.',
  )
  const link = within(waiting).getByRole('link', { name: 'Furnace range: Tarn 4' })
  const place = document.getElementById(link.getAttribute('href')!.slice(1))!
  expect(within(place).getByRole('article', { name: 'Refused: Furnace range: Tarn 4' })).toBeDefined()
  expect(sheet('Refused: Furnace range: Tarn 4').textContent).toContain('1 record below waits for it')
  expect(await accessibilityFaults(document.body)).toEqual([])
})

test('a record that names one not sent yet says after which it goes, each of a chain after its own', () => {
  open({ waiting: [range, position, request] })
  expect(sheet('Waiting: Furnace range: Tarn 4').textContent).not.toMatch(/It goes after|cannot go/)
  expect(sheet('Waiting: Switch position: Low fire').textContent).toContain(
    'It goes after Furnace range: Tarn 4, which is not sent yet.',
  )
  const last = sheet('Waiting: Rating request: nothing')
  expect(within(last).getByRole('link', { name: 'Switch position: Low fire' }).getAttribute('href')).toBe(
    `#${position.id}`,
  )
})

test('a record that names one neither in the log nor here any more says so, and can be taken off', async () => {
  const device = open({ waiting: [position] })
  expect(sheet('Waiting: Switch position: Low fire').textContent).toContain(
    'It cannot go: it names a record that is neither in the team’s log nor on this device any more.',
  )
  await press('Take it off this device')
  expect(device.dropRefused).toHaveBeenCalledWith(position.id)
})

test('nothing is called gone before the log was read once', () => {
  open({ waiting: [position], freshAt: undefined })
  expect(sheet('Waiting: Switch position: Low fire').textContent).not.toContain('cannot go')
  expect(screen.queryByRole('button', { name: 'Take it off this device' })).toBeNull()
})

test('a record that needs nothing but what is in the log says nothing of the kind, and no id is shown', () => {
  open({ waiting: [range], refused: [position] })
  expect(sheet('Waiting: Furnace range: Tarn 4').textContent).not.toMatch(/It goes after|cannot go/)
  expect(document.body.textContent).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-/)
})

test('nothing is called gone while the file is out of sight', () => {
  open({ waiting: [position], locked: true })
  expect(sheet('Waiting: Switch position: Low fire').textContent).not.toContain('cannot go')
})

test('a refused record says why, and can be mended in its form, sent again, or withdrawn after a warning', async () => {
  const saidAt = { address: '/equipment/add-range', drafts: [] }
  const device = open({ refused: [range], saidAt })
  expect(sheet('Refused: Furnace range: Tarn 4').textContent).toContain('Ask a manager.')
  await press('Mend it in its form')
  expect(device.mend).toHaveBeenCalledWith(range.id)
  await press('Send it again as it is')
  expect(device.sendAgain).toHaveBeenCalledWith(range.id)
  await press('Withdraw it')
  expect(screen.getByRole('alert').textContent).toContain('what it says is lost with it')
  expect(device.dropRefused).not.toHaveBeenCalled()
  await press('Keep it')
  await press('Withdraw it')
  await press('Withdraw it for good')
  expect(device.dropRefused).toHaveBeenCalledWith(range.id)
  expect(await accessibilityFaults(document.body)).toEqual([])
})

test('a refused record whose form is not known any more offers no mending', () => {
  open({ refused: [range] })
  expect(screen.queryByRole('button', { name: 'Mend it in its form' })).toBeNull()
})
