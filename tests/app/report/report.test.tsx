import { cleanup, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { ReportScreen } from '@/app/report/ReportScreen'
import { dispatcher, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, fill, press, select, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (records = equipmentRecords, query = `position=${ids.low}`) => {
  openAt(`/report?${query}`)
  const device = fakeDevice({ records })
  renderOn(device, <ReportScreen />)
  return device
}
const says = (text: string) => fill('Letter for letter, as printed, written or said', text)
const fromManual = () => {
  select('What does the number rest on?', 'Maker’s literature, current')
  fill('Document, with its number', 'LF2 manual')
  fill('Page', '31')
  choose('Which furnaces does the source say it holds for?', 'Every one of this range')
}

describe('ReportScreen', () => {
  test('shows back what was read, with its other unit, before anything is saved', () => {
    open()
    says('CLOSE -.58 ±.05 WC')
    expect(document.body.textContent).toContain('closes at 0.58 in. w.c. ± 0.05')
    expect(document.body.textContent).toContain('144 Pa')
    expect(screen.getByRole('img', { name: /0\.58/ })).toBeDefined()
  })

  test('a code that was scanned is put in by a tap, and stays marked until somebody has checked it', async () => {
    open(equipmentRecords, `position=${ids.low}&read=om7731`)
    const number = () => screen.getByLabelText<HTMLInputElement>('Part number that the source names')
    expect(number().value).toBe('')
    expect(document.body.textContent).toContain('On file: OM-7731 (')
    await press('Use it as the part number')
    expect(number().value).toBe('om7731')
    expect(document.body.textContent).toContain('Read from a picture: check it.')
    select('What does the number rest on?', 'Rating label on the factory switch')
    expect(screen.getByLabelText<HTMLSelectElement>('Which part is it?').value).toBe(ids.oldPart)
    await press('I checked it against the label')
    expect(document.body.textContent).not.toContain('Read from a picture')
    expect(number().value).toBe('om7731')
    expect(screen.getByRole('link', { name: 'Scan it again' }).getAttribute('href')).toBe(
      `/scan?take=part&then=${encodeURIComponent(`/report?position=${ids.low}`)}`,
    )
  })

  test('saves exactly what the source says, letter for letter, and goes back to the card', async () => {
    const device = open()
    says('CLOSE -.58 ±.05 WC')
    fromManual()
    await press('Save the report')
    expect(device.added).toHaveLength(1)
    expect(device.added[0]).toMatchObject({
      kind: 'report',
      body: {
        positionId: ids.low,
        asWritten: 'CLOSE -.58 ±.05 WC',
        action: 'closes',
        limit: 'nominal',
        sense: 'suction',
        unit: 'inH2O',
        decimals: 2,
        source: 'current literature',
        proof: { kind: 'document', name: 'LF2 manual', page: '31' },
        revisionRange: {},
        serialRange: {},
        elevationBand: {},
      },
    })
    expect(device.added[0]!.body.pascals).toBeCloseTo(144.4716, 3)
    expect(wentTo()).toEqual([`/setpoint?position=${ids.low}`])
  })

  test('a label with make and break makes two reports', async () => {
    const device = open()
    says('CLOSE -0.75 MAX / OPEN -0.60 ±0.05 WC')
    fromManual()
    await press('Save the report')
    expect(device.added.map(({ body }) => [body.action, body.limit])).toEqual([
      ['closes', 'maximum'],
      ['opens', 'nominal'],
    ])
  })

  test('a bare number asks for its unit, its action and its sense, and fills in none of them', async () => {
    const device = open()
    says('.58')
    fromManual()
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByRole('group', { name: /Which unit/ })).toBeDefined()
    expect(screen.getByText(/No unit is written/)).toBeDefined()
    const missing = screen.getByRole('navigation', { name: 'Answers to put right' })
    expect(missing.textContent).toMatch(/^3 answers are missing/)
    expect(document.activeElement).toBe(screen.getAllByRole('radio', { name: 'in. w.c.' })[0])
  })

  test('letters like PF are not decoded', () => {
    open()
    says('PF .58 WC')
    expect(screen.getByRole('group', { name: 'Does it close or open at this number?' })).toBeDefined()
    expect(screen.getByText(/Letters like PR or PF are not decoded/)).toBeDefined()
  })

  test('a lost decimal point is named before saving', () => {
    open()
    says('CLOSE -5.8 in. w.c.')
    expect(screen.getAllByText(/^Look again/).length).toBeGreaterThan(0)
  })

  test('says at once that it disputes what is on file', () => {
    open(disputedRecords.slice(0, -1))
    says('CLOSE -.42 WC')
    fromManual()
    expect(screen.getByText('Disputes.').parentElement!.textContent).toContain(
      'Disputes what is on file (Supported now).',
    )
  })

  test('the maker’s current page that disputes what is on file leads on to settling with it', async () => {
    openAt(`/report?position=${ids.low}`)
    const device = fakeDevice({ records: disputedRecords.slice(0, -1), me: dispatcher })
    renderOn(device, <ReportScreen />)
    says('CLOSE -.42 WC')
    fromManual()
    expect(document.body.textContent).toContain('Once this is saved, you are led on to settling it.')
    await press('Save the report')
    expect(wentTo()).toEqual([`/settle?position=${ids.low}&action=closes&evidence=${device.added[0]!.id}`])
  })

  test('a third number in a dispute disputes, and is not called a lead; one that is on file takes a side', () => {
    open(disputedRecords)
    says('CLOSE -.66 WC')
    fromManual()
    const preview = () => screen.getByText(/^Nothing of this is on file yet/).parentElement!.textContent
    expect(preview()).toContain('Disputes what is on file (In dispute now).')
    expect(preview()).not.toContain('lead')
    says('CLOSE -.42 WC')
    expect(preview()).toContain('It is in dispute already, and this agrees with one side.')
  })

  test('a number that better proof outweighs is said to be outweighed, and neither a dispute nor a lead', () => {
    open(disputedRecords.slice(0, -1))
    says('CLOSE -.42 WC')
    select('What does the number rest on?', 'Maker’s literature, older')
    fill('Document, with its number', 'LF2 manual')
    fill('Page', '31')
    choose('Which furnaces does the source say it holds for?', 'Every one of this range')
    const preview = screen.getByText(/^Nothing of this is on file yet/).parentElement!.textContent!
    const level = screen.getByText('Read as:').parentElement!.textContent!
    expect(preview.includes('Disputes.')).toBe(level.includes('Would stand as: In dispute'))
    expect(preview).not.toContain('lead')
  })

  test('where one text states two numbers, each verdict says which of them it is of', () => {
    open(disputedRecords.slice(0, -1))
    says('CLOSE -0.42 / OPEN -0.30 WC')
    fromManual()
    const preview = screen.getByText(/^Nothing of this is on file yet/).parentElement!.textContent!
    expect(preview).toContain('Closes (make\u00a0point): Disputes.')
    expect(preview).toContain('Opens (break\u00a0point): New.')
  })

  test('what is answered beside the text is read back with it', () => {
    open()
    says('.58 WC')
    choose('Does it close or open at this number?', 'Closes (make)')
    choose('Suction or pressure?', 'suction')
    expect(screen.getByText('Read as:').parentElement!.textContent).toMatch(
      /closes at 0\.58 in\. w\.c\..*suction/,
    )
  })

  test('says at once that it agrees', () => {
    open(disputedRecords.slice(0, -1))
    says('CLOSE -.58 WC')
    fromManual()
    expect(document.body.textContent).toMatch(
      /agrees with what is on file|Would stand as: (Verified|Supported)/,
    )
  })

  test('how it would stand is said as what would be, in the words and in the picture, before it is whole and after', async () => {
    open()
    says('CLOSE -.58 WC')
    const read = screen.getByText('Read as:').closest('[role=status]')!
    expect(read.textContent).toContain('Not saved yet. Would stand as: Unverified')
    expect(
      screen.getByRole('img', {
        name: /Closes at 0\.58 in\. w\.c\., not saved yet: would stand as Unverified\./,
      }),
    ).toBeDefined()
    fromManual()
    expect(read.textContent).toContain('Not saved yet. Would stand as: Supported')
    expect(screen.getByRole('img', { name: /not saved yet: would stand as Supported\./ })).toBeDefined()
    expect(screen.getByText('Nothing of this is on file yet. Once the report is saved:')).toBeDefined()
    expect(document.body.textContent).toContain(
      'Closes (make\u00a0point): Not on file now. Would stand as: Supported.',
    )
  })

  test('a number that would dispute what is on file would itself stand in dispute', () => {
    open(disputedRecords.slice(0, -1))
    says('CLOSE -.42 WC')
    fromManual()
    expect(screen.getByRole('img', { name: /Closes at 0\.42 .*would stand as In dispute/ })).toBeDefined()
  })

  const whichFurnaces = 'Which furnaces does the source say it holds for?'
  const rangesSaved = async (answer: RegExp) => {
    const device = open(equipmentRecords, `position=${ids.low}&furnace=${ids.furnace}`)
    says('CLOSE -.58 WC')
    fromManual()
    choose(whichFurnaces, answer)
    await press('Save the report')
    const { furnaceId, revisionRange, serialRange, elevationBand } = device.added[0]!.body
    return { furnaceId, revisionRange, serialRange, elevationBand }
  }

  test('a source that names this very furnace is recorded for its serial, and one that does not say for no range', async () => {
    expect(await rangesSaved(/^Only this furnace.*S2204-118/)).toEqual({
      furnaceId: ids.furnace,
      revisionRange: undefined,
      serialRange: { from: 'S2204-118', to: 'S2204-118' },
      elevationBand: undefined,
    })
    cleanup()
    expect(await rangesSaved(/^The source does not say/)).toEqual({
      furnaceId: ids.furnace,
      revisionRange: undefined,
      serialRange: undefined,
      elevationBand: undefined,
    })
  })

  test('without a serial on file “only this furnace” is no answer, because nothing could be recorded of it', () => {
    open(equipmentRecords, `position=${ids.low}&furnace=${ids.bareFurnace}`)
    const answers = within(screen.getByRole('group', { name: whichFurnaces })).getAllByRole('radio')
    expect(answers.map((answer) => answer.closest('label')!.textContent)).toEqual([
      'Some: it states a range',
      'Every one of this range',
      'The source does not sayThen it counts for this furnace, and is a lead for every other.',
    ])
  })

  test('an answer that is none any more is asked again, and nothing is taken for it', async () => {
    openAt(`/report?position=${ids.low}&furnace=${ids.furnace}`)
    const draft = `report /setpoint?position=${ids.low}&furnace=${ids.furnace} `
    const device = fakeDevice({
      records: equipmentRecords,
      drafts: { [draft]: { asWritten: 'CLOSE -.58 WC', source: 'remembered', covers: 'this furnace' } },
    })
    renderOn(device, <ReportScreen />)
    await screen.findByText('What you had typed here before is still in the form.')
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByText('Say which furnaces it holds for.')).toBeDefined()
  })

  test('a label read off a general-purpose switch is refused, with what to do instead, and keeps what was typed', async () => {
    const device = open()
    says('CLOSE -.58 WC')
    select('What does the number rest on?', 'Rating label on a switch of unknown origin')
    select('Which part is it?', 'GP-ADJ-1 (general-purpose)')
    choose('Which furnaces does the source say it holds for?', /^The source does not say/)
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByText('no general-purpose switch')).toBeDefined()
    expect(screen.getByRole('link', { name: 'Record it as found fitted' }).getAttribute('href')).toBe(
      `/found-fitted?position=${ids.low}&fitted=${ids.generic}&printed=CLOSE+-.58+WC`,
    )
    expect((screen.getByLabelText(/Letter for letter/) as HTMLInputElement).value).toBe('CLOSE -.58 WC')
  })

  test('the label of another maker’s part is no factory label here, unless the part is listed for this switch', async () => {
    const [otherMaker, part] = ['f1', 'f2'].map((end) => `01920000-0000-7000-8000-0000000000${end}`)
    const others = (positionIds: string[]) => [
      ...equipmentRecords,
      ...held([
        [otherMaker!, 'maker', { name: 'Brackwater' }],
        [
          part!,
          'part',
          {
            partNumber: 'BW-12',
            class: 'factory',
            fieldAdjustable: false,
            makerId: otherMaker,
            positionIds,
            listedIn: 'Parts list 7',
          },
        ],
      ]).map((record, place) => ({ ...record, seq: 70 + place })),
    ]
    const record = async (positionIds: string[], words: string) => {
      const device = open(others(positionIds))
      says('CLOSE -.58 WC')
      select('What does the number rest on?', 'Rating label on the factory switch')
      select('Which part is it?', `BW-12 (factory part, ${words})`)
      choose(whichFurnaces, 'Every one of this range')
      await press('Save the report')
      return device.added.length
    }
    expect(await record([], 'another maker’s')).toBe(0)
    expect(screen.getByRole('alert').textContent).toContain('This part is one of another maker')
    expect(screen.queryByRole('link', { name: 'Record it as found fitted' })).toBeNull()
    cleanup()
    expect(await record([ids.low], 'listed for this switch')).toBe(1)
  })

  test('a part that is on file for another switch is to be looked at again', () => {
    open()
    says('CLOSE -.58 WC')
    select('What does the number rest on?', 'Rating label on the factory switch')
    select('Which part is it?', 'OM-9140 (factory part, listed for another switch)')
    expect(
      screen.getByText(/^Look again: OM-9140 is on file for .+, and not for this switch\./),
    ).toBeDefined()
    select('Which part is it?', 'OM-8802 (factory part, listed for this switch)')
    expect(screen.queryByText(/^Look again: /)).toBeNull()
  })

  test('a number of unusual size is saved only once somebody has looked again', async () => {
    const device = open()
    says('CLOSE -5.8 in. w.c.')
    fromManual()
    await press('Save the report')
    expect(device.added).toEqual([])
    tick('I looked again: this is what is written')
    await press('Save the report')
    expect(device.added).toHaveLength(1)
  })

  test('a break beyond its make is asked about at the field, and is saved only once somebody has looked again', async () => {
    const device = open()
    says('closes at .48, opens at .62 in. w.c. suction')
    expect(document.body.textContent).toContain('Look again: it would open beyond where it closes.')
    expect(document.body.textContent).toContain('Which of the two is where it closes')
    fromManual()
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(document.body.textContent).toContain('Make and break may have been swapped.')
    tick('I looked again: this is what is written')
    await press('Save the report')
    expect(device.added).toHaveLength(2)
  })

  test('make beyond break is the usual order, and of a switch that opens on rise the reverse is no slip', () => {
    open()
    says('closes at .62, opens at .48 in. w.c. suction')
    expect(document.body.textContent).not.toContain('Look again')
    cleanup()
    open(
      equipmentRecords.map((record) =>
        record.id === ids.low
          ? { ...record, body: { ...(record.body as object), kind: 'opens on rise' } }
          : record,
      ),
    )
    says('closes at .48, opens at .62 in. w.c. suction')
    expect(document.body.textContent).not.toContain('Look again')
  })

  test('a source that states some furnaces has to say which', async () => {
    const device = open()
    says('CLOSE -.58 WC')
    fromManual()
    choose('Which furnaces does the source say it holds for?', 'Some: it states a range')
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByText(/Type the range that the source states/)).toBeDefined()
  })

  test('what was answered for another source is not recorded', async () => {
    const device = open()
    says('CLOSE -.58 WC')
    select('What does the number rest on?', 'Distributor')
    select('Did somebody else listen?', 'Bram Osterlo')
    fill('Who said it? First name, department', 'Ilse')
    fromManual()
    await press('Save the report')
    expect(device.added[0]!.body).not.toHaveProperty('secondPersonId')
    expect(device.added[0]!.body).not.toHaveProperty('saidBy')
  })

  test('a call asks whether it was read back', async () => {
    const device = open()
    says('CLOSE -.58 WC')
    select('What does the number rest on?', 'Distributor')
    choose('Which furnaces does the source say it holds for?', 'Every one of this range')
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByText(/Say whether it was read back/)).toBeDefined()
  })

  test('a document without its page is refused at the page', async () => {
    const device = open()
    says('CLOSE -.58 WC')
    fromManual()
    fill('Page', '')
    await press('Save the report')
    expect(device.added).toEqual([])
    expect(screen.getByLabelText('Page').getAttribute('aria-invalid')).toBe('true')
  })

  test('a report needs its switch', () => {
    open(equipmentRecords, '')
    expect(screen.getByText('A report needs its switch')).toBeDefined()
  })
})
