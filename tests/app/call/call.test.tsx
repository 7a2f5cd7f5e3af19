import { act, fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { CallScreen } from '@/app/call/CallScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { dispatcher, fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, fill, press, select, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids, pascals } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const id = (end: string) => `01920000-0000-7000-8000-0000000001${end}`
const logged = (before: readonly HeldRecord[], told: Parameters<typeof held>[0]): HeldRecord[] => [
  ...before,
  ...held(told).map((record, index) => ({ ...record, seq: 100 + index })),
]
const questions: Parameters<typeof held>[0] = [
  [
    id('a1'),
    'rating request',
    { positionId: ids.low, furnaceId: ids.furnace, printed: 'PR .58', needs: ['infants'] },
  ],
  [id('a2'), 'rating request', { positionId: ids.high, printed: 'nothing', needs: [] }],
  [
    id('b0'),
    'organisation',
    { name: 'Hobb & Lane counter', source: 'distributor', makerIds: [ids.maker], number: '555-0142' },
  ],
]
const open = (
  records = logged(equipmentRecords, questions),
  href = `/call?request=${id('a1')}&organisation=${id('b0')}`,
) => {
  openAt(href)
  const device = fakeDevice({ records, me: dispatcher })
  return { device, ...renderOn(device, <CallScreen />) }
}
const number = (name: string) => screen.getByRole('article', { name: `Number for ${name}` })
/** Types into a field of one number. */
const say = (of: string, label: string | RegExp, text: string) =>
  fireEvent.change(within(number(of)).getByLabelText(label), { target: { value: text } })
const asSpoken = 'Value and unit, as spoken'
const again = 'Once more, as they repeat it'
const readBack = () => screen.getAllByRole('checkbox', { name: /^Read back to/ })

/** Types a value, then once more without seeing the first. */
function sayTwice(of: string, text: string, second = text) {
  say(of, asSpoken, text)
  const field = within(number(of)).getByLabelText(again)
  act(() => field.focus())
  say(of, again, second)
  act(() => field.blur())
}
const everyOne = (of: string) =>
  fireEvent.click(within(number(of)).getByRole('radio', { name: 'Every one of this range' }))

describe('the call sheet', () => {
  test('has ready what the other side will ask for, then asks in spoken order', async () => {
    const { container } = open()
    const sheet = screen.getByRole('article', { name: 'Say and ask: Low fire, Orrinmoor Larkfell 2' })
    for (const ready of [
      'L F two dash zero eight zero dash B',
      'S two two zero four',
      '4,800 ft',
      'PR .58',
      'OM-7731, OM-8802',
    ])
      expect(sheet.textContent).toContain(ready)
    const asks = within(sheet)
      .getAllByRole('listitem')
      .map((item) => item.textContent)
    expect(asks[0]).toMatch(/part number is current/)
    expect(asks[2]).toMatch(/Where does it close, where does it open/)
    expect(asks.at(-1)).toMatch(/reference for this call/)
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('another dispatcher’s promise is seen before the call is made', () => {
    const promised = held([
      [id('a4'), 'promise', { requestId: id('a1'), minutes: 240 }, new Date().toISOString()],
    ])[0]!
    open([...logged(equipmentRecords, questions), { ...promised, author: technician.id, seq: 200 }])
    expect(screen.getByText('Ines Talvik has promised to ring.')).toBeDefined()
  })

  test('a counter is never called another maker’s: it sells many, and may not have been asked about this one', () => {
    open(
      logged(equipmentRecords, [
        ...questions,
        [id('b2'), 'organisation', { name: 'Tarnside counter', source: 'distributor', makerIds: [] }],
        [id('b3'), 'organisation', { name: 'Wexhollow line', source: 'factory support', makerIds: [] }],
      ]),
    )
    const options = within(screen.getByLabelText('Organisation')).getAllByRole('option')
    expect(options.map(({ textContent }) => textContent)).toEqual([
      'Choose whom you ring',
      'Hobb & Lane counter',
      'Tarnside counter (not yet asked about this maker)',
      'Wexhollow line (another maker’s)',
      'One that is not on file',
    ])
  })

  test('an address without a question says where to choose one', () => {
    open(equipmentRecords, '/call')
    expect(screen.getByRole('heading', { level: 1, name: 'A call needs its question' })).toBeDefined()
  })
})

describe('an answer that disputes what is on file', () => {
  const support: Parameters<typeof held>[0] = [
    [
      id('b1'),
      'organisation',
      { name: 'Orrinmoor technical line', source: 'factory support', makerIds: [ids.maker] },
    ],
  ]
  const label = disputedRecords.filter((record) => record.id !== ids.counter)
  const ring = (organisation: string) =>
    open(
      logged(label, [...questions, ...support]),
      `/call?request=${id('a1')}&organisation=${id(organisation)}`,
    )
  const answer = () => {
    sayTwice('Low fire', 'closes at -.66 in wc')
    everyOne('Low fire')
    fireEvent.click(readBack()[0]!)
  }
  const atTheEnd = () => screen.getByRole('article', { name: 'Before you hang up' }).textContent

  test('from factory support: the reference that settles it is asked for, and saving leads on to settling with it', async () => {
    const { device } = ring('b1')
    answer()
    expect(atTheEnd()).toContain('only with a reference. Ask for it before you hang up.')
    fill('Their reference or ticket number', 'T-5512')
    expect(atTheEnd()).toContain('Once this is saved, you are led on to settling it.')
    await press('Save the call')
    const report = device.added.find(({ kind }) => kind === 'report')!
    expect(wentTo()).toEqual([
      `/settle?position=${ids.low}&furnace=${ids.furnace}&action=closes&evidence=${report.id}`,
    ])
  })

  test('from a distributor: nothing is promised, and saving leads back to the desk', async () => {
    ring('b0')
    answer()
    fill('Their reference or ticket number', 'C-91')
    expect(atTheEnd()).not.toContain('settl')
    await press('Save the call')
    expect(wentTo()).toEqual(['/phone-desk'])
  })
})

describe('a number of the call', () => {
  test('is read as it is typed, hidden while it is typed once more, and read back only when both agree', () => {
    open()
    say('Low fire', asSpoken, 'closes at -.65 in wc')
    expect(number('Low fire').textContent).toContain('New. Nothing is on file for it yet.')
    expect(within(number('Low fire')).getByRole('img').getAttribute('aria-label')).toMatch(/0\.65/)
    everyOne('Low fire')
    expect(readBack()[0]).toHaveProperty('disabled', true)
    const field = within(number('Low fire')).getByLabelText(again)
    act(() => field.focus())
    expect(number('Low fire').textContent).not.toContain('.65')
    expect(within(number('Low fire')).queryByRole('img')).toBeNull()
    say('Low fire', again, '.56')
    act(() => field.blur())
    expect(within(number('Low fire')).getByRole('alert').textContent).toMatch(/not the same number/)
    expect(readBack()[0]).toHaveProperty('disabled', true)
    act(() => field.focus())
    say('Low fire', again, '-.65')
    act(() => field.blur())
    expect(number('Low fire').textContent).toContain(
      '“negative zero point six five inches, closes, low fire, points not stated”',
    )
    expect(readBack()[0]).toHaveProperty('disabled', false)
  })

  test('two numbers of one call each keep their own answers', () => {
    open(undefined, `/call?request=${id('a1')}&request=${id('a2')}&organisation=${id('b0')}`)
    say('Low fire', asSpoken, 'closes at -.60 in wc')
    say('High fire', asSpoken, 'closes at -.95 in wc')
    const names = ['Low fire', 'High fire'].map((of) =>
      within(number(of)).getByRole<HTMLInputElement>('radio', { name: 'Every one of this range' }),
    )
    expect(names[0]!.name).not.toBe(names[1]!.name)
    for (const radio of names) fireEvent.click(radio)
    expect(names.map(({ checked }) => checked)).toEqual([true, true])
  })

  test('a value that is changed after it was read back must be read back again', () => {
    open()
    sayTwice('Low fire', 'closes at -.65 in wc')
    everyOne('Low fire')
    fireEvent.click(readBack()[0]!)
    expect(readBack()[0]).toHaveProperty('checked', true)
    say('Low fire', asSpoken, 'closes at -.56 in wc')
    expect(readBack()[0]).toHaveProperty('checked', false)
    expect(readBack()[0]).toHaveProperty('disabled', true)
  })

  test.each([
    ['-.58', /Agrees\. Agrees with what is on file \(Supported now/],
    ['-5.8', /A slip\? -?.*looks like a slip: ten times\..*Ask back: “Where is the decimal point\?/],
    ['-.70', /Disputes\. Disputes what is on file .*Ask back: “Which is it for this model and serial/],
  ])('closes at %s beside a proven number is judged at once, with what to ask back', (typed, verdict) => {
    const label = disputedRecords.filter((record) => record.id !== ids.counter)
    open(logged(label, questions))
    say('Low fire', asSpoken, `closes at ${typed} in wc`)
    expect(number('Low fire').textContent).toMatch(verdict)
  })

  test('the number on file for the other action, or for the other switch, is asked about', () => {
    const label = disputedRecords.filter((record) => record.id !== ids.counter)
    open(logged(label, questions), `/call?request=${id('a1')}&request=${id('a2')}&organisation=${id('b0')}`)
    say('Low fire', asSpoken, 'opens at -.58 in wc')
    expect(number('Low fire').textContent).toContain('is on file as where it closes (Supported).')
    expect(number('Low fire').textContent).toContain('Is that where the switch closes, or where it opens?')
    say('High fire', asSpoken, 'closes at -.58 in wc')
    expect(number('High fire').textContent).toContain(
      'is on file for the other switch, Low fire (Supported).',
    )
  })

  const turnedRound = 'closes at -.48, opens at -.62 in wc'

  test('a break beyond its make is asked back at the field, and is neither read back nor saved until somebody has', async () => {
    const { device } = open()
    sayTwice('Low fire', turnedRound)
    everyOne('Low fire')
    const low = number('Low fire')
    expect(low.textContent).toContain('Look again: it would open beyond where it closes.')
    expect(low.textContent).toContain(
      'Ask back: “Which of the two is where it closes, and which where it opens?”',
    )
    expect(readBack()[0]).toHaveProperty('disabled', true)
    await press('Save the call')
    expect(device.added).toEqual([])
    tick('I looked again: this is what is written')
    expect(readBack()[0]).toHaveProperty('disabled', false)
    say('Low fire', asSpoken, 'closes at -.49, opens at -.62 in wc')
    expect(
      within(low).getByRole('checkbox', { name: 'I looked again: this is what is written' }),
    ).toHaveProperty('checked', false)
    say('Low fire', asSpoken, 'closes at -.62, opens at -.48 in wc')
    expect(low.textContent).not.toContain('Look again')
  })

  test('a break beyond the make that stands in another answer, or on file, is asked about too', () => {
    const label = disputedRecords.filter((record) => record.id !== ids.counter)
    const { unmount } = open(logged(label, questions))
    say('Low fire', asSpoken, 'opens at -.72 in wc')
    expect(number('Low fire').textContent).toContain('Look again. Once it is saved, it would open beyond')
    say('Low fire', asSpoken, 'opens at -.42 in wc')
    expect(number('Low fire').textContent).not.toContain('Look again')
    unmount()
    open()
    say('Low fire', asSpoken, 'closes at -.48 in wc')
    expect(number('Low fire').textContent).not.toContain('Look again')
    fireEvent.click(screen.getByRole('button', { name: 'Another number for Low fire' }))
    const second = screen.getAllByRole('article', { name: 'Number for Low fire' })[1]!
    fireEvent.change(within(second).getByLabelText(asSpoken), { target: { value: 'opens at -.62 in wc' } })
    for (const each of screen.getAllByRole('article', { name: 'Number for Low fire' }))
      expect(each.textContent).toContain('Look again. Once it is saved, it would open beyond')
  })

  test('high fire below low fire in one call is asked about', () => {
    open(
      logged(equipmentRecords, questions),
      `/call?request=${id('a1')}&request=${id('a2')}&organisation=${id('b0')}`,
    )
    say('Low fire', asSpoken, 'closes at -.80 in wc')
    say('High fire', asSpoken, 'closes at -.50 in wc')
    expect(number('High fire').textContent).toContain(
      'Which number is for low fire, and which for high fire?',
    )
  })

  test('a universal switch or a general-purpose part that is offered is refused with what to say', async () => {
    const { device } = open()
    sayTwice('Low fire', 'closes at -.60 in wc')
    everyOne('Low fire')
    fill('Part number that is current', 'gp adj 1')
    expect(within(number('Low fire')).getByRole('alert').textContent).toContain(
      'Which part number does the maker list',
    )
    await press('Save the call')
    expect(device.added).toEqual([])
  })
})

describe('saving the call', () => {
  test('several answers go into the log in one step, with the call and what it replaced', async () => {
    const { device } = open()
    fill('Who speaks? First name, department', 'Odo, counter')
    fill('Their reference or ticket number', 'C-207')
    tick('High fire, Orrinmoor Larkfell 2')
    sayTwice('Low fire', 'closes at -.60 in wc', '-.60')
    everyOne('Low fire')
    fireEvent.click(readBack()[0]!)
    fill('Part number that is current', 'OM-9001')
    expect(readBack()[0]).toHaveProperty('checked', false)
    fireEvent.click(readBack()[0]!)
    select('Does it replace an older number?', 'OM-8802')
    choose('Did the setting change with it?', 'The same')
    fill('Where is it printed?', 'Kit sheet 51')
    sayTwice('High fire', 'closes at -.95 in wc')
    everyOne('High fire')
    await press('Save the call')
    expect(device.added.map(({ kind }) => kind)).toEqual([
      'part',
      'supersession',
      'report',
      'report',
      'call attempt',
    ])
    const [part, supersession, low, high, call] = device.added
    expect(part!.body).toMatchObject({
      partNumber: 'OM-9001',
      class: 'factory',
      listedIn: 'Call Hobb & Lane counter, ref. C-207',
    })
    expect(supersession!.body).toMatchObject({
      oldPartId: ids.newPart,
      newPartId: part!.id,
      setting: 'same',
      kit: false,
    })
    expect(low!.body).toMatchObject({
      positionId: ids.low,
      furnaceId: ids.furnace,
      requestId: id('a1'),
      action: 'closes',
      pascals: expect.closeTo(0.6 * 249.08891, 9),
      source: 'distributor',
      readBack: true,
      proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-207' },
      saidBy: 'Odo, counter',
      partNumber: 'OM-9001',
      note: 'Printed in: Kit sheet 51',
    })
    expect(high!.body).toMatchObject({ positionId: ids.high, requestId: id('a2'), readBack: false })
    expect(call!.body).toMatchObject({
      organisationId: id('b0'),
      requestIds: [id('a1'), id('a2')],
      outcome: 'answered',
      person: 'Odo, counter',
      reference: 'C-207',
    })
    expect(wentTo()).toEqual(['/phone-desk'])
    expect([...device.drafts.keys()]).toEqual([])
  })

  test('a number for the other switch of the range answers its own open question', async () => {
    const { device } = open()
    fireEvent.click(screen.getByRole('button', { name: 'Another number for High fire' }))
    say('High fire', asSpoken, 'closes at -.95 in wc')
    everyOne('High fire')
    await press('Save the call')
    expect(device.added.map(({ kind, body }) => [kind, body.requestId ?? body.requestIds])).toEqual([
      ['report', id('a2')],
      ['call attempt', [id('a1'), id('a2')]],
    ])
  })

  test('a call that comes to nothing is kept too, with a new organisation', async () => {
    const { device } = open(undefined, `/call?request=${id('a1')}`)
    select('Organisation', 'One that is not on file')
    fill('Its name and branch', 'Orrinmoor technical line')
    choose('What is it?', 'The maker’s technical line')
    fill('Number', '555-0177')
    choose('What became of the call?', 'They don’t know')
    await press('Save the call')
    expect(device.added).toMatchObject([
      {
        kind: 'organisation',
        body: {
          name: 'Orrinmoor technical line',
          source: 'factory support',
          makerIds: [ids.maker],
          number: '555-0177',
        },
      },
      { kind: 'call attempt', body: { organisationId: device.added[0]!.id, outcome: 'doesn’t know' } },
    ])
  })

  test('ring back asks when, and keeps the offset of this device', async () => {
    const { device } = open()
    choose('What became of the call?', 'Ring back later')
    await press('Save the call')
    expect(device.added).toEqual([])
    fill('Ring back when?', '2026-02-08T13:10')
    await press('Save the call')
    const { ringBackAt } = device.added[0]!.body
    expect(ringBackAt).toMatch(/^2026-02-08T13:10:00[+-]\d\d:\d\d$/)
    expect(new Date(String(ringBackAt)).getTime()).toBe(new Date('2026-02-08T13:10').getTime())
  })

  test('what lacks something says what, and what was typed survives a closed tab', async () => {
    const { device, unmount } = open(undefined, `/call?request=${id('a1')}`)
    say('Low fire', asSpoken, 'closes at -.60')
    await press('Save the call')
    expect(device.added).toEqual([])
    expect(screen.getByRole('navigation', { name: 'Answers to put right' }).textContent).toContain(
      'Organisation',
    )
    unmount()
    const { container } = renderOn(device, <CallScreen />)
    await screen.findByText('What you had typed here before is still in the form.')
    expect(screen.getByLabelText<HTMLInputElement>(asSpoken).value).toBe('closes at -.60')
    expect(await accessibilityFaults(container)).toEqual([])
  })
})

test('the value on file is worked out with the answer as it will be, and is not foretold', () => {
  const label = disputedRecords.filter((record) => record.id !== ids.counter)
  open(logged(label, questions))
  say('Low fire', asSpoken, `closes at -${(pascals.make / 249.08891).toFixed(2)} in wc`)
  everyOne('Low fire')
  expect(number('Low fire').textContent).toContain('Agrees. Agrees with what is on file')
})
