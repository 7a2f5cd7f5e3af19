import { render } from '@testing-library/react'
import { beforeEach, expect, test, vi } from 'vitest'
import { DeviceContext } from '@/app/device/deviceContext'
import { StillHere } from '@/app/device/StillHere'
import { forgetPerson, onPersonGone, rememberedPerson, rememberPerson } from '@/app/device/whoIsHere'
import { dispatcher, fakeDevice, technician } from '../setup/fakeDevice'

beforeEach(() => localStorage.clear())

/** What another tab does to the store, as this one hears of it. */
function byAnotherTab(act: () => void): void {
  const keys = ['inchwater person', 'inchwater device']
  const before = keys.map((key) => localStorage.getItem(key))
  act()
  keys.forEach((key, at) => {
    const newValue = localStorage.getItem(key)
    if (newValue !== before[at]) window.dispatchEvent(new StorageEvent('storage', { key, newValue }))
  })
}

test.each([
  ['its person left', () => forgetPerson(localStorage, technician.id), 1],
  ['somebody else came', () => rememberPerson(localStorage, dispatcher), 1],
  ['what is kept is not to be read', () => localStorage.setItem('inchwater person', '{"id"'), 1],
  [
    'its person was given another name',
    () => rememberPerson(localStorage, { ...technician, name: 'Ines T.' }),
    0,
  ],
  ['the device was named', () => localStorage.setItem('inchwater device', 'd1'), 0],
])('a page is told once where by another tab its person is gone: %s', (_what, act, times) => {
  rememberPerson(localStorage, technician)
  const onGone = vi.fn()
  const stop = onPersonGone(() => technician.id, onGone)
  byAnotherTab(act)
  expect(onGone).toHaveBeenCalledTimes(times)
  stop()
  byAnotherTab(() => localStorage.removeItem('inchwater person'))
  expect(onGone).toHaveBeenCalledTimes(times)
})

test.each([
  ['is forgotten', technician, undefined],
  ['and somebody else has come since: that one stays', dispatcher, dispatcher.id],
])('whose device was emptied %s', (_what, remembered, left) => {
  rememberPerson(localStorage, remembered)
  const device = fakeDevice({ me: technician })
  const state = { ...device.state(), ended: 'emptied' as const }
  render(
    <DeviceContext value={{ ...device, state: () => state }}>
      <StillHere>Furnace at Mill Row 12</StillHere>
    </DeviceContext>,
  )
  expect(document.body.textContent).not.toContain('Mill Row')
  expect(rememberedPerson(localStorage)?.id).toBe(left)
})
