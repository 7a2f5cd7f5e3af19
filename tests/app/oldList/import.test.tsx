import { act, screen, waitFor, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { ImportScreen } from '@/app/oldList/ImportScreen'
import { RecordScreen } from '@/app/record/RecordScreen'
import { WithdrawScreen } from '@/app/record/WithdrawScreen'
import type { Role } from '@/lib/records/envelope'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { someEquipment } from '../../records/oldList/someList'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { press, select, tick } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const equipment = someEquipment()

function open(text: string | Uint8Array, role: Role = 'manager') {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text
  const file = { name: 'old ratings.csv', bytes, sha256: 'a'.repeat(64) }
  const device = fakeDevice({
    records: equipment.all,
    me: { id: 'person-9', name: 'Mara Otell', role },
    drafts: { 'import file': file },
  })
  return { device, ...renderOn(device, <ImportScreen />) }
}

const judged = async (rows: number) => {
  await press(`Try it: judge ${rows} ${rows === 1 ? 'row' : 'rows'}`)
  return screen.findByRole('table', { name: /Rows of the file/ })
}
const rowOf = (table: HTMLElement, row: number) =>
  within(table)
    .getByRole('rowheader', { name: String(row) })
    .closest('tr')!
const head = 'maker,range,position,make (in. w.c.)'

test('shows what was guessed, and nothing is written before the rows are confirmed', async () => {
  const { device, container } = open(`${head}\nOrrinmoor,OM Ridge,Low fire,0.65`)
  await screen.findByText(/1 row, 4 columns/)
  const table = await judged(1)
  expect(rowOf(table, 2).textContent).toContain('closes at 0.65 in. w.c.')
  expect(rowOf(table, 2).textContent).toContain(
    'Would stand as Unverified: Taken over from an old list, without proof, day not stated',
  )
  expect(device.added).toEqual([])
  expect(await accessibilityFaults(container)).toEqual([])

  await press('Take over 1 row')
  await screen.findByText('All of them are in the team’s log.')
  expect(device.added.map(({ kind }) => kind)).toEqual(['import', 'imported lines', 'report'])
  expect(device.added[0]!.body).toMatchObject({ fileName: 'old ratings.csv', rows: 1, taken: 1 })
  expect(screen.getByRole('link', { name: 'Undo: withdraw this import' }).getAttribute('href')).toBe(
    `/withdraw?record=${device.added[0]!.id}`,
  )
  expect(device.drafts.has('import file')).toBe(false)
})

test('no number is shown in the dry run without its level, source and day', async () => {
  open(`${head},open (in. w.c.)\nOrrinmoor,OM Ridge,Low fire,0.65,0.50`)
  await screen.findByText(/1 row, \d columns/)
  const lines = within(rowOf(await judged(1), 2)).getAllByRole('listitem')
  expect(lines).toHaveLength(2)
  for (const line of lines) expect(line.textContent).toMatch(/Would stand as \w+: .+, day not stated/)
})

test('a misspelt maker is asked about, with the one on file first; without an answer its rows are left out', async () => {
  const { device } = open(`${head}\nOrinmoor,OM Ridge,Low fire,0.65`)
  const asked = await screen.findByRole('combobox', { name: 'Maker “Orinmoor”' })
  expect(
    within(asked)
      .getAllByRole('option')
      .map(({ textContent }) => textContent),
  ).toEqual(['Choose', 'It is Orrinmoor', 'Add it as a new maker', 'Leave its rows out'])
  expect(rowOf(await judged(1), 2).textContent).toContain('nobody has said what to do with it')
  expect(screen.queryByRole('button', { name: /Take over/ })).toBeNull()
  select('Maker “Orinmoor”', 'It is Orrinmoor')
  await screen.findByText('Every name has its answer.')
  expect(rowOf(await judged(1), 2).textContent).toContain('To be taken over')
  await press('Take over 1 row')
  await waitFor(() => expect(device.added).toHaveLength(3))
  expect(foldTeamFile(equipment.all).makers.size).toBe(1)
  expect(device.added.some(({ kind }) => kind === 'maker')).toBe(false)
})

test.each(['Universal switch', 'Jumpered'])(
  'a row of %s is refused, with the way to record it as found fitted',
  async (note) => {
    open(`${head},note\nOrrinmoor,OM Ridge,Low fire,0.65,${note}`)
    await screen.findByText(/1 row, \d columns/)
    const row = rowOf(await judged(1), 2)
    expect(row.textContent).toContain('Refused')
    expect(within(row).getByRole('link', { name: 'Record it as found fitted' }).getAttribute('href')).toBe(
      '/found-fitted',
    )
  },
)

test('shows how many of many records are kept on the device, and says so no more when they are not', async () => {
  const { device } = open(`${head}\nOrrinmoor,OM Ridge,Low fire,0.65`)
  let refuse = (_cause: Error): void => {}
  device.addAll = (records, { told } = {}) => {
    expect(records).toHaveLength(3)
    told?.(2)
    return new Promise((_, no) => {
      refuse = no
    })
  }
  await screen.findByText(/1 row, 4 columns/)
  const rows = await judged(1)
  await press('Take over 1 row')
  const status = screen.getByText(/Keeping record 2 of 3/)
  expect(status.getAttribute('role')).toBe('status')
  // Beside the button, which stands below a long page of rows.
  expect(rows.compareDocumentPosition(status)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
  await act(async () => refuse(new Error('QuotaExceededError')))
  expect(screen.queryByText(/Keeping record/)).toBeNull()
  expect(screen.getByText(/Nothing was taken over/).textContent).toContain('QuotaExceededError')
})

test('an unusual number is held back until the person says that the list says so', async () => {
  open(`${head}\nOrrinmoor,OM Ridge,Low fire,6.5`)
  await screen.findByText(/1 row, \d columns/)
  expect(rowOf(await judged(1), 2).textContent).toContain('Look again')
  tick(/Take unusual numbers over/)
  expect(rowOf(await judged(1), 2).textContent).toContain('To be taken over')
})

test('columns that are missing are named, and nothing can be tried before they are there', async () => {
  open('one,two\nOrrinmoor,x')
  await screen.findByText('Say which column names the maker.')
  expect(screen.queryByRole('button', { name: /Try it/ })).toBeNull()
  select('Column 1: one', 'Maker')
  await waitFor(() => expect(screen.queryByText('Say which column names the maker.')).toBeNull())
})

test('an empty file gets a sentence, and is kept', async () => {
  const { device } = open('\n')
  await screen.findByText(/The file is empty\. Choose the file that holds the ratings\./)
  expect(device.drafts.has('import file')).toBe(true)
})

test.each(['dispatcher', 'technician'] as const)('a %s is told who imports', (role) => {
  open(`${head}\nOrrinmoor,OM Ridge,Low fire,0.65`, role)
  expect(screen.getByRole('heading', { level: 1, name: 'A manager imports' })).toBeTruthy()
})

test('before an import is withdrawn, and before its withdrawal is, it is said what goes and what comes back', async () => {
  const { device, unmount } = open(
    `${head},open (in. w.c.)\nWexhollow,W Line,Low fire,0.40,0.30\nOrrinmoor,OM Ridge,Low fire,0.65,`,
  )
  await screen.findByText(/2 rows, 5 columns/)
  select('Maker “Wexhollow”', 'Add it as a new maker')
  select('Range “W Line” of Wexhollow', 'Add it as a new range')
  select('Position “Low fire”', 'Add it: one port')
  await judged(2)
  await press('Take over 2 rows')
  await screen.findByText('All of them are in the team’s log.')
  unmount()
  const would = () => screen.getByText('Nothing is withdrawn yet. Once it is:').parentElement!.textContent
  openAt(`/withdraw?record=${device.added[0]!.id}`)
  const shown = renderOn(device, <WithdrawScreen />)
  expect(would()).toContain(
    '3 reports of the list, at 2 switch positions, count no more: ratings there are worked out without them. With them go: 1 maker, 1 range, 1 position.',
  )
  expect(would()).not.toContain('stays as it is')
  shown.unmount()
  const withdrawal = await device.add('withdrawal', {
    record: device.added[0]!.id,
    reason: 'The wrong list.',
  })
  openAt(`/withdraw?record=${withdrawal}`)
  renderOn(device, <WithdrawScreen />)
  expect(would()).toContain('3 reports of the list, at 2 switch positions, count again')
  expect(would()).toContain('With them come back: 1 maker, 1 range, 1 position.')
})

test('a record says which row of which list it was made of, and, once that is withdrawn, that it went with the import', async () => {
  const { device, unmount } = open(`${head}\nOrrinmoor,OM Ridge,Low fire,0.65`)
  await screen.findByText(/1 row, 4 columns/)
  await judged(1)
  await press('Take over 1 row')
  await screen.findByText('All of them are in the team’s log.')
  unmount()
  const [imported, , report] = device.added
  openAt(`/record?id=${report!.id}`)
  const read = renderOn(device, <RecordScreen />)
  expect(screen.getByText(/Taken over from row 2 of/).textContent).toBe(
    'Taken over from row 2 of old ratings.csv.',
  )
  read.unmount()
  await device.add('withdrawal', { record: imported!.id, reason: 'The wrong list.' })
  renderOn(device, <RecordScreen />)
  const withdrawn = screen.getByRole('article', { name: 'Withdrawn' })
  expect(withdrawn.textContent).toContain('The wrong list.')
  expect(within(withdrawn).getByRole('link', { name: 'the whole import' }).getAttribute('href')).toBe(
    `/record?id=${imported!.id}`,
  )
})

test('a workbook is told from a list, with what to do instead', async () => {
  open(new Uint8Array([0x50, 0x4b, 0x03, 0x04, 0x14, 0, 6, 0]))
  await screen.findByText(/This is a workbook\. Save it as CSV, then choose that file\./)
  expect(screen.queryByRole('button', { name: /Try it/ })).toBeNull()
})

test('the dry run says which columns are not read, until one is chosen for them', async () => {
  open(`${head},spread,empty\nOrrinmoor,OM Ridge,Low fire,0.65,0.05,`)
  await screen.findByText(/Not read, because nothing is chosen for it under “Columns”: “spread”\./)
  select('Column 5: spread', 'Tolerance (±), in the row’s unit')
  expect(screen.queryByText(/Not read, because/)).toBeNull()
  expect(rowOf(await judged(1), 2).textContent).toContain('closes at 0.65 in. w.c. ± 0.05')
})

test('a row that opens beyond where it closes is held back with the slip named', async () => {
  open(`${head},break (in. w.c.)\nOrrinmoor,OM Ridge,Low fire,0.75,0.97`)
  await screen.findByText(/1 row, 5 columns/)
  const row = rowOf(await judged(1), 2).textContent
  expect(row).toContain('Look again')
  expect(row).toContain('the two may have been swapped')
  expect(screen.queryByRole('button', { name: /Take over/ })).toBeNull()
})
