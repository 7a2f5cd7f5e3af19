import { act, fireEvent, screen, within } from '@testing-library/react'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { PhotoScreen } from '@/app/photo/PhotoScreen'
import { ReadPhotoScreen } from '@/app/photo/ReadPhotoScreen'
import { RecordScreen } from '@/app/record/RecordScreen'
import { ReportScreen } from '@/app/report/ReportScreen'
import { SetpointScreen } from '@/app/setpoint/SetpointScreen'
import { failure, success } from '@/lib/core/result'
import { preparePicture } from '@/lib/device/picture/prepare'
import { dispatcher, fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, fill, press, select } from '../setup/hands'
import { equipmentRecords, ids, pascals, report } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
// What a browser does to a picture is tried in a browser.
vi.mock('@/lib/device/picture/prepare')

const sha256 = 'ab'.repeat(32)
const taken = {
  sha256,
  mediaType: 'image/jpeg',
  width: 1365,
  height: 2048,
  bytes: 400_000,
  capturedAt: '2026-01-12T09:41:07',
} as const
const photoId = '01950000-0000-7000-8000-000000000001'
const reportId = '01950000-0000-7000-8000-000000000002'

beforeEach(() => {
  vi.mocked(preparePicture).mockResolvedValue(success({ ...taken, blob: new Blob(['jpeg']) }))
  vi.stubGlobal('URL', Object.assign(URL, { createObjectURL: () => 'blob:here', revokeObjectURL: () => {} }))
  return () => vi.unstubAllGlobals()
})

/** Chooses a file in the photo field, as a camera gives it. */
async function takePhoto(group: string, button = 'Take a photo') {
  const field = within(screen.getByRole('group', { name: group }))
  const file = new File(['from the camera'], 'IMG_0001.jpg', { type: 'image/jpeg' })
  await act(async () => {
    fireEvent.change(field.getByLabelText(button), { target: { files: [file] } })
  })
  return field
}

describe('a photo in a report', () => {
  const openReport = (source: string) => {
    openAt(`/report?position=${ids.low}`)
    const device = fakeDevice({ records: equipmentRecords })
    const drawn = renderOn(device, <ReportScreen />)
    fill('Letter for letter, as printed, written or said', 'CLOSES -.58 in. w.c.')
    select('What does the number rest on?', source)
    choose('Which furnaces does the source say it holds for?', 'Every one of this range')
    return { device, ...drawn }
  }

  test('is shown before it is saved, with the camera’s time, and goes before the report that it proves', async () => {
    const { device, container } = openReport('Rating label on the factory switch')
    fireEvent.change(screen.getByLabelText('Which part is it?'), { target: { value: ids.oldPart } })
    const field = await takePhoto('Photo of the label')
    expect(field.getByRole('img', { name: 'Photo of the label, not saved yet' })).toBeDefined()
    expect(document.body.textContent).toContain('Taken 12 Jan 2026, 09:41 by the camera’s clock.')
    expect(await accessibilityFaults(container)).toEqual([])
    await press('Save the report')
    const [photo, said] = device.added
    expect(photo).toMatchObject({
      kind: 'photo',
      body: { ...taken, shows: 'rating label', positionId: ids.low },
    })
    expect(photo?.body).not.toHaveProperty('blob')
    expect(said).toMatchObject({ kind: 'report', body: { proof: { kind: 'photo', photoId: photo?.id } } })
  })

  test('comes after the report where a named document is its proof, and bears it out', async () => {
    const { device } = openReport('Maker’s literature, current')
    fill('Document, with its number', 'LF2 manual')
    fill('Page', '31')
    await takePhoto('Photo of the page', 'Choose a picture')
    await press('Save the report')
    const [said, photo] = device.added
    expect(said).toMatchObject({ kind: 'report', body: { proof: { kind: 'document', name: 'LF2 manual' } } })
    expect(photo).toMatchObject({ kind: 'photo', body: { shows: 'document page', reportId: said?.id } })
  })

  test('is not asked for where somebody said it, and is left out again by a tap', async () => {
    const { device } = openReport('Maker’s literature, older')
    await takePhoto('Photo of the page')
    await press('Leave it out')
    await press('Save the report')
    expect(device.added.map(({ kind }) => kind)).toEqual(['report'])
    expect(device.added[0]?.body).not.toHaveProperty('proof')
    select('What does the number rest on?', 'Distributor')
    expect(screen.queryByRole('group', { name: /^Photo/ })).toBeNull()
  })

  test('that can’t be kept is refused in a sentence, and the report is saved without it', async () => {
    vi.mocked(preparePicture).mockResolvedValue(
      failure('no-room', 'This device has no room left for the picture.'),
    )
    const { device } = openReport('Maker’s literature, older')
    await takePhoto('Photo of the page')
    expect(screen.getByText('This device has no room left for the picture.')).toBeDefined()
    await press('Save the report')
    expect(device.added.map(({ kind }) => kind)).toEqual(['report'])
  })
})

const manual = {
  ...report,
  source: 'older literature',
  asWritten: '-0.58 in. w.c.',
  pascals: pascals.make,
  proof: { kind: 'photo', photoId },
}
const onFile = [
  ...equipmentRecords,
  ...held([
    [photoId, 'photo', { ...taken, shows: 'document page', positionId: ids.low, caption: 'Page 31' }],
    [reportId, 'report', manual],
  ]).map((record, at) => ({ ...record, seq: 100 + at })),
]
const withheld = onFile.map((record) =>
  record.id === photoId ? { ...record, withheld: { by: 'w1', fields: ['picture'] } } : record,
)

describe('a second person', () => {
  const openPhoto = (me = dispatcher, records = onFile) => {
    openAt(`/photo?id=${photoId}`)
    const device = fakeDevice({ records, me, picturesHeld: [sha256] })
    return { device, ...renderOn(device, <PhotoScreen />) }
  }

  test('is asked to read a photo, and is not told on its page what the first one read', async () => {
    const { container } = openPhoto()
    expect(screen.getByRole('link', { name: 'Read this photo yourself' }).getAttribute('href')).toBe(
      `/photo/read?id=${photoId}`,
    )
    expect(container.textContent).not.toMatch(/0?\.58/)
    expect(screen.getByRole('img').getAttribute('src')).toBe(`/api/photos/${sha256}`)
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('who read it first is not asked again, and sees what was read', () => {
    openPhoto(technician)
    expect(screen.queryByRole('link', { name: 'Read this photo yourself' })).toBeNull()
    expect(document.body.textContent).toContain('-0.58 in. w.c.')
  })

  test('reads it alone: a report of the same photo, origin and range, with the number that this person saw', async () => {
    openAt(`/photo/read?id=${photoId}`)
    const device = fakeDevice({ records: onFile, me: dispatcher, picturesHeld: [sha256] })
    const { container } = renderOn(device, <ReadPhotoScreen />)
    expect(container.textContent).not.toMatch(/0?\.58/)
    await press('Save what I read')
    expect(device.added).toEqual([])
    fill(/^Letter for letter/, '-0.53')
    choose('Which unit? None is written.', 'in. w.c.')
    choose('Does it close or open at this number?', 'Closes (make)')
    await press('Save what I read')
    expect(device.added).toMatchObject([
      {
        kind: 'report',
        body: {
          positionId: ids.low,
          asWritten: '-0.53',
          action: 'closes',
          source: 'older literature',
          proof: { kind: 'photo', photoId },
          revisionRange: {},
        },
      },
    ])
    expect(wentTo()).toEqual([`/photo?id=${photoId}`])
  })

  test('can’t read what was withheld, and is told so', () => {
    openAt(`/photo/read?id=${photoId}`)
    renderOn(fakeDevice({ records: withheld, me: dispatcher, picturesHeld: [sha256] }), <ReadPhotoScreen />)
    expect(document.body.textContent).toContain('There is nothing to read a second time')
  })

  test('where it was withheld, the page says so, and no picture is asked for', () => {
    openPhoto(technician, withheld)
    expect(screen.queryByRole('img')).toBeNull()
    expect(document.body.textContent).toContain('Picture withheld')
    expect(document.body.textContent).toContain('It counts as no proof any more')
  })
})

describe('the source of a number that was read off a photo', () => {
  const openSetpoint = (records = onFile, picturesHeld: string[] = [sha256]) => {
    openAt(`/setpoint?position=${ids.low}`)
    return act(async () => renderOn(fakeDevice({ records, picturesHeld }), <SetpointScreen />))
  }
  const sourceOf = (container: HTMLElement) =>
    container.querySelector('ul[aria-label^="Sources of"]')?.textContent

  test('says “photo” only while its picture can be looked at', async () => {
    const here = await openSetpoint()
    expect(sourceOf(here.container)).toContain('Maker’s literature, older, photoInes Talvik, ')
    here.unmount()
    const missing = await openSetpoint(onFile, [])
    expect(sourceOf(missing.container)).toContain(
      'Maker’s literature, older, photo not here yetInes Talvik, ',
    )
    missing.unmount()
    expect(sourceOf((await openSetpoint(withheld)).container)).toContain('older, photo withheldInes Talvik, ')
  })

  test('names the second person who read the same, and not one who read another number', async () => {
    const second = (more: object) => ({
      ...onFile.at(-1)!,
      id: '01950000-0000-7000-8000-000000000003',
      author: dispatcher.id,
      seq: 200,
      body: { ...manual, asWritten: '.58 suction', ...more },
    })
    const alike = await openSetpoint([...onFile, second({})])
    expect(sourceOf(alike.container)).toContain(
      'older, photo, read the same by two peopleInes Talvik and Bram Osterlo, ',
    )
    alike.unmount()
    const { container } = await openSetpoint([...onFile, second({ pascals: pascals.other })])
    expect(container.textContent).not.toContain('read the same')
    expect(container.textContent).not.toContain('Ines Talvik and')
  })
})

test('a picture that the server has not got is said to be not here yet, and what cannot be fetched needs a signal', async () => {
  openAt(`/photo?id=${photoId}`)
  const without = renderOn(fakeDevice({ records: onFile }), <PhotoScreen />)
  expect(document.body.textContent).toContain('Picture not here yet')
  without.unmount()
  renderOn(fakeDevice({ records: onFile, picturesHeld: [sha256] }), <PhotoScreen />)
  await act(async () => {
    fireEvent.error(screen.getByRole('img'))
  })
  expect(document.body.textContent).toContain('Picture needs a signal')
})

test('a report’s record shows its photo, small, and takes one that was made later', async () => {
  openAt(`/record?id=${reportId}`)
  const device = fakeDevice({ records: onFile, picturesHeld: [sha256] })
  renderOn(device, <RecordScreen />)
  const strip = screen.getByRole('list', { name: 'Photos of what was read' })
  expect(within(strip).getByRole('link').getAttribute('href')).toBe(`/photo?id=${photoId}`)
  expect(strip.querySelector('img')?.getAttribute('src')).toBe(`/api/photos/${sha256}?size=small`)
  fireEvent.click(screen.getByText('Add a photo of what was read'))
  await screen.findByRole('group', { name: 'Photo' })
  vi.mocked(preparePicture).mockResolvedValue(
    success({ ...taken, sha256: 'cd'.repeat(32), blob: new Blob(['other']) }),
  )
  await takePhoto('Photo')
  await press('Save the photo')
  expect(device.added).toMatchObject([
    { kind: 'photo', body: { sha256: 'cd'.repeat(32), reportId, shows: 'document page' } },
  ])
})
