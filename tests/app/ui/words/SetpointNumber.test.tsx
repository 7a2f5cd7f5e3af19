import { render, screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { AsPrinted } from '@/app/ui/words/AsPrinted'
import { LevelWord } from '@/app/ui/words/LevelWord'
import { SetpointNumber } from '@/app/ui/words/SetpointNumber'
import { SourceList } from '@/app/ui/words/SourceList'
import { accessibilityFaults } from '../accessibilityFaults'

const inch = 249.08891 // NIST SP 811 (2008), App. B.8
const sources = [
  { key: 'a', words: 'Label on the factory switch, photo', who: 'Mara', date: '2026-01-09', href: '/log/a' },
  {
    key: 'b',
    words: 'Distributor, read back, ref. 4471',
    who: 'Inés',
    date: '2026-01-12',
    note: 'by telephone',
  },
]
const setpoint = {
  pascals: 0.58 * inch,
  unit: 'inH2O',
  action: 'closes',
  limit: 'nominal',
  toleranceAbove: 0.05 * inch,
  toleranceBelow: 0.05 * inch,
  standing: { level: 'Verified', asOf: '2026-01-12', sources },
} as const

test('SetpointNumber shows number, unit, other unit, tolerance, level with date, and every source with date', async () => {
  const { container } = render(<SetpointNumber {...setpoint} />)
  for (const words of ['Closes (make point)', '0.58', 'in. w.c.', '144 Pa', '± 0.05', 'Verified'])
    expect(screen.getByText(words)).toBeTruthy()
  const items = within(
    screen.getByRole('list', { name: 'Sources of: Closes (make\u00a0point)' }),
  ).getAllByRole('listitem')
  expect(items.map((item) => item.textContent)).toEqual([
    'Label on the factory switch, photoMara, 9 Jan 2026',
    'Distributor, read back, ref. 4471by telephoneInés, 12 Jan 2026',
  ])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('SetpointNumber shows no number without a source, and says that it is missing', () => {
  const { container } = render(
    <SetpointNumber {...setpoint} standing={{ ...setpoint.standing, sources: [] }} picture={<i>0.58</i>} />,
  )
  expect(container.textContent).toBe(
    'Closes (make\u00a0point): not shown, because no source is on file for this number.',
  )
})

test('SetpointNumber in a line still names its sources and their dates', () => {
  render(<SetpointNumber {...setpoint} size="line" />)
  expect(
    screen.getByText(
      'Label on the factory switch, photo, 9 Jan 2026; Distributor, read back, ref. 4471, 12 Jan 2026',
    ),
  ).toBeTruthy()
})

test('SetpointNumber shows as many decimals as its source stated', () => {
  render(<SetpointNumber {...setpoint} pascals={0.585 * inch} decimals={3} />)
  expect(screen.getByText('0.585')).toBeTruthy()
})

test('SetpointNumber puts inches beside pascals for a reader of pascals', () => {
  render(<SetpointNumber {...setpoint} unit="Pa" />)
  expect(screen.getByText('144')).toBeTruthy()
  expect(screen.getByText('0.58 in. w.c.')).toBeTruthy()
})

test('SetpointNumber never names an action that nobody stated', () => {
  render(<SetpointNumber {...setpoint} action="not stated" />)
  expect(screen.getByText('Closes or opens: not stated')).toBeTruthy()
  expect(screen.queryByText(/make point|break point/)).toBeNull()
})

test('a level without its date, and a number without its standing, do not compile', () => {
  // @ts-expect-error A level needs its date.
  const undated = <LevelWord level="Verified" />
  // @ts-expect-error A number needs its standing.
  const bare = <SetpointNumber pascals={144} unit="Pa" action="closes" limit="nominal" />
  expect([undated, bare]).toHaveLength(2)
})

test('LevelWord is a word with a date that a machine can read', () => {
  const { container } = render(<LevelWord level="In dispute" asOf="2026-01-12T09:00:00-05:00" />)
  expect(container.textContent).toBe('In dispute 12 Jan 2026')
  expect(container.querySelector('time')?.dateTime).toBe('2026-01-12T09:00:00-05:00')
  expect(container.querySelector('svg, img')).toBeNull()
})

test('SourceList says so when there is no source', () => {
  render(<SourceList sources={[]} />)
  expect(screen.getByText('No source on file.')).toBeTruthy()
})

test('SourceList leads to the record of a source', () => {
  render(<SourceList sources={sources} />)
  const link = screen.getByRole('link', { name: 'Label on the factory switch, photo' })
  expect(link.getAttribute('href')).toBe('/log/a')
})

test('AsPrinted keeps a label letter for letter, blanks included', () => {
  const { container } = render(<AsPrinted text={'-.58  ±.05 WC CLOSE'} />)
  expect(container.textContent).toBe('-.58  ±.05 WC CLOSE')
  expect(container.querySelector('q')?.getAttribute('translate')).toBe('no')
})
