import { render, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { renderToStaticMarkup } from 'react-dom/server'
import { afterEach, expect, test } from 'vitest'
import DangerPage from '@/app/danger/page'
import { Caution } from '@/app/ui/danger/Caution'
import { DangerSheet } from '@/app/ui/danger/DangerSheet'
import { accessibilityFaults } from '../accessibilityFaults'

afterEach(() => {
  Reflect.deleteProperty(HTMLDialogElement.prototype, 'showModal')
})

const itemsOf = (title: string) =>
  within(screen.getByRole('region', { name: title }))
    .getAllByRole('listitem')
    .map((item) => item.textContent ?? '')

test('the first group gets everybody out before anything else is done', () => {
  render(<DangerPage />)
  const items = itemsOf('Get everybody out now')
  for (const sign of [/smell gas/, /CO alarm is sounding/, /above your employer’s limit/, /unwell/])
    expect(
      items.some((item) => sign.test(item)),
      `${sign}`,
    ).toBe(true)
  expect(items.slice(4)).toEqual([
    'Everybody out, now.',
    expect.stringMatching(/^Operate no electrical switch/),
    'Put this phone away.',
    'From outside, call the emergency number and the gas supplier.',
  ])
})

test('the second group shuts down, leaves off, tags and tells', () => {
  render(<DangerPage />)
  const items = itemsOf('Shut down and leave off')
  const signs = [
    /spilling/,
    /CO in the flue is high, or climbing/,
    /rolled out.*scorched/,
    /Cracked heat exchanger/,
    /Vent separated, or blocked/,
    /jumper or any other bypass/,
    /closed at rest, or closing below its rating/,
    /generic switch.*another elevation/,
    /Water on the controls/,
  ]
  for (const sign of signs)
    expect(
      items.some((item) => sign.test(item)),
      `${sign}`,
    ).toBe(true)
  expect(items.slice(-4)).toEqual([
    'Gas and power off, if that is safe.',
    'Leave it off.',
    'Tag it.',
    'Tell the occupant, and whoever your local rules name.',
  ])
})

test('the danger sheet defers to maker, codes and licence, asks for a meter, and shows no figure', () => {
  const { container } = render(<DangerPage />)
  const words = container.textContent ?? ''
  expect(words).toMatch(/Before you go in: a CO meter that you carry, switched on/)
  expect(words).toMatch(/maker’s instructions, local codes and a licensed person’s judgement come before/)
  expect(words).not.toMatch(/\d|ppm/)
})

test('the page has one title and no fault that axe finds, and needs no script', async () => {
  const { container } = render(<DangerPage />)
  expect(screen.getByRole('heading', { level: 1, name: 'Danger sheet' })).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
  const served = renderToStaticMarkup(<DangerPage />)
  expect(served).toContain('Put this phone away.')
  expect(served).not.toMatch(/<script|<button| style=/)
})

test('DangerSheet opens in place with one tap', async () => {
  const opened: Element[] = []
  HTMLDialogElement.prototype.showModal = function show(this: HTMLDialogElement) {
    this.setAttribute('open', '')
    opened.push(this)
  }
  const { container } = render(<DangerSheet />)
  await userEvent.click(screen.getByRole('link', { name: 'Open the danger sheet' }))
  expect(opened).toHaveLength(1)
  const dialog = screen.getByRole('dialog', { name: 'Danger sheet' })
  expect(within(dialog).getByText('Everybody out, now.')).toBeTruthy()
  expect(within(dialog).getByRole('button', { name: 'Close' })).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('DangerSheet leads to the page where nothing can be opened in place', () => {
  render(<DangerSheet />)
  const link = screen.getByRole('link', { name: 'Open the danger sheet' })
  const press = new MouseEvent('click', { bubbles: true, cancelable: true })
  let left = true
  link.ownerDocument.addEventListener(
    'click',
    (event) => {
      left = !event.defaultPrevented
      event.preventDefault()
    },
    { once: true },
  )
  link.dispatchEvent(press)
  expect(left).toBe(true)
  expect(link.getAttribute('href')).toBe('/danger')
})

test('Caution asks about the meter, the danger signs and the people, and leads to the sheet', async () => {
  const { container } = render(<Caution />)
  const caution = screen.getByRole('complementary', { name: 'Caution' })
  expect(caution.textContent).toMatch(/CO meter on\?.*unwell\? Then stop here\./)
  expect(within(caution).getByRole('link', { name: 'Open the danger sheet' })).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})
