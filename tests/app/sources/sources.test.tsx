import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { SourcesScreen } from '@/app/sources/SourcesScreen'
import { believed, callsWords, lessonsWords } from '@/app/sources/trustWords'
import { reliabilityKeyOf } from '@/lib/core/rating'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { ratingReportOf } from '@/lib/records/view/ratingReports'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { sourceTrust } from '@/lib/records/view/sourceTrust'
import { dispatcher, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, ids, pascals, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const settlementId = '01920000-0000-7000-8000-0000000000d1'
/** Factory support settles it: the data plate had named the number, the counter is overruled. */
const settled = [
  ...settleableRecords,
  ...held([
    [
      settlementId,
      'settlement',
      {
        positionId: ids.low,
        action: 'closes',
        pascals: pascals.make,
        limit: 'nominal',
        evidenceReportId: ids.support,
        overruledReportIds: [ids.counter],
        reason: 'The counter read the break point.',
      },
      '2026-01-13T09:00:00.000Z',
    ],
  ]).map((record) => ({ ...record, seq: 90 })),
]
const open = (records = settled) => {
  openAt('/sources')
  return renderOn(fakeDevice({ records, me: dispatcher }), <SourcesScreen />)
}
const rowOf = (name: string) =>
  within(screen.getByRole('row', { name: new RegExp(`^${name}`) }))
    .getAllByRole('cell')
    .map((cell) => cell.textContent)

test('each source stands with its first value, what settled disputes said for and against it, and what it became', async () => {
  const { container } = open()
  // Beta means: 95 of 100, and 96 of 101 once it held; 90 of 100, and 90 of 101 once it was overruled.
  expect(rowOf('Data plate on the unit')).toEqual(['95.0 % (95 of 100)', '1', '0', '95.0 % (96 of 101)'])
  expect(rowOf('Distributor, read back')).toEqual(['90.0 % (90 of 100)', '0', '1', '89.1 % (90 of 101)'])
  // What settled it is no test of its own source.
  expect(rowOf('Factory technical support, read back')).toEqual([
    '96.0 % (96 of 100)',
    '0',
    '0',
    '96.0 % (96 of 100)',
  ])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('the figures open the reports and the settlement behind them, and a small number is called small', () => {
  open()
  const sheet = screen.getByRole('article', { name: 'Distributor, read back' })
  expect(sheet.textContent).toContain('90.0 % (90 of 100) at first, 89.1 % (90 of 101) now')
  expect(sheet.textContent).toContain('One settled dispute is a small number')
  expect(
    within(sheet)
      .getByRole('link', { name: /ref\. C-91/ })
      .getAttribute('href'),
  ).toBe(`/record?id=${ids.counter}`)
  expect(within(sheet).getByRole('link', { name: 'Settled 13 Jan 2026' }).getAttribute('href')).toBe(
    `/record?id=${settlementId}`,
  )
  expect(screen.getByRole('article', { name: 'Hobb & Lane counter' }).textContent).toContain(
    'Calls settled for: 0. Calls settled against: 1. One call is a small number',
  )
})

test('what is shown is what the weighing takes', () => {
  const file = foldTeamFile(settled)
  const taken = ratingSettings(file, '2026-02-01').reliability
  expect(Object.fromEntries(sourceTrust(file).map(({ key, now }) => [key, now]))).toEqual(taken)
  for (const { key, start, now, lessons } of sourceTrust(file)) {
    const right = lessons.filter((lesson) => lesson.held).length
    expect([now.right - start.right, now.wrong - start.wrong]).toEqual([right, lessons.length - right])
    for (const { report } of lessons) expect(reliabilityKeyOf(ratingReportOf(report, file))).toBe(key)
  }
})

test('with nothing settled, or once the evidence is withdrawn, every source stands at its first value', () => {
  const { unmount } = open(disputedRecords)
  expect(screen.getByText('No dispute is settled yet')).toBeDefined()
  unmount()
  open([
    ...settled,
    ...held([
      ['01920000-0000-7000-8000-0000000000d2', 'withdrawal', { record: ids.support, reason: 'Misheard.' }],
    ]).map((record) => ({ ...record, seq: 91 })),
  ])
  expect(screen.getByText('No dispute is settled yet')).toBeDefined()
  expect(rowOf('Distributor, read back')).toEqual(['90.0 % (90 of 100)', '0', '0', '90.0 % (90 of 100)'])
})

test('believed(counts) is the mean of the Beta counts', () => {
  expect([believed({ right: 97, wrong: 3 }), believed({ right: 1, wrong: 2 })]).toEqual([
    '97.0 % (97 of 100)',
    '33.3 % (1 of 3)',
  ])
})

test('lessonsWords(lessons) calls ten or more no small number any more', () => {
  const lesson = { held: true } as Parameters<typeof lessonsWords>[0][number]
  expect(lessonsWords(Array.from({ length: 9 }, () => lesson))).toContain(
    '9 settled disputes are a small number',
  )
  expect(lessonsWords(Array.from({ length: 10 }, () => lesson))).toBe(
    'Settled for it: 10. Settled against it: 0.',
  )
})

test('callsWords(lessons) counts a call once, as held only if all of its numbers did', () => {
  const lesson = (reference: string, held: boolean) =>
    ({
      held,
      report: { body: { proof: { kind: 'call reference', organisation: 'Hobb', reference } } },
    }) as Parameters<typeof callsWords>[0][number]
  expect(
    callsWords([lesson('C-1', true), lesson('C-1', true), lesson('C-2', true), lesson('C-2', false)]),
  ).toBe(
    'Calls settled for: 1. Calls settled against: 1. 2 calls are a small number: they say little by themselves.',
  )
})
