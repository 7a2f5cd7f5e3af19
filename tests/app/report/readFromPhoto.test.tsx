import { act, screen, within } from '@testing-library/react'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { ReportScreen } from '@/app/report/ReportScreen'
import { readLabel } from '@/lib/core/label'
import { failure, success } from '@/lib/core/result'
import { readLabelPhoto } from '@/lib/device/labels/readLabelPhoto'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
vi.mock('@/lib/device/labels/readLabelPhoto')

const photo = {
  sha256: 'a'.repeat(64),
  mediaType: 'image/jpeg',
  width: 4,
  height: 3,
  bytes: 1,
} as const
const words = (text: string, confidence = 93) => text.split(' ').map((word) => ({ text: word, confidence }))
const label = (...lines: string[]) =>
  success(
    readLabel(
      lines.map((line) => words(line)),
      ['OM-7731', 'OM-8802'],
    ),
  )

beforeEach(() => {
  vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:here')
  vi.spyOn(URL, 'revokeObjectURL').mockReturnValue()
})

/** A report off a label, with its photo taken and kept on the device. */
async function open() {
  openAt(`/report?position=${ids.low}`)
  const draft = `report /setpoint?position=${ids.low} `
  const device = fakeDevice({
    records: equipmentRecords,
    drafts: { [draft]: { source: 'factory switch label', photo } },
  })
  await device.keepPicture({ ...photo, blob: new Blob(['x']) })
  const drawn = await act(async () => renderOn(device, <ReportScreen />))
  return { device, ...drawn }
}
const text = () => screen.getByLabelText<HTMLInputElement>('Letter for letter, as printed, written or said')
const number = () => screen.getByLabelText<HTMLInputElement>('Part number that the source names')
const listed = (name: string) => within(screen.getByRole('list', { name })).getAllByRole('listitem')

describe('reading the label in the photo of a report', () => {
  test('nothing is read until asked, and nothing is filled in until it is chosen', async () => {
    vi.mocked(readLabelPhoto).mockResolvedValue(label('P/N OM-773I', 'CLOSE -.58 WC'))
    const { device, container } = await open()
    expect(readLabelPhoto).not.toHaveBeenCalled()
    await press('Read the label in this photo')
    expect(vi.mocked(readLabelPhoto).mock.calls[0]?.[1]).toContain('OM-8802')
    expect([text().value, number().value]).toEqual(['', ''])
    expect(listed('Part numbers read from the photo')[0]!.textContent).toContain('On file: OM-7731')
    expect(device.added).toEqual([])
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('a tap fills the field, which stays marked until somebody has checked it or typed over it', async () => {
    vi.mocked(readLabelPhoto).mockResolvedValue(label('P/N OM-773I', 'CLOSE -.58 WC'))
    await open()
    await press('Read the label in this photo')
    await press('Take “CLOSE -.58 WC” as the rating')
    expect(text().value).toBe('CLOSE -.58 WC')
    expect(screen.getAllByText('Read from a picture: check it.')).toHaveLength(1)
    await press('Take “OM-773I” as the part number')
    // As it was read, and never put right by what is on file; which part it is follows from its spelling.
    expect(number().value).toBe('OM-773I')
    expect(screen.getByLabelText<HTMLSelectElement>('Which part is it?').value).toBe(ids.oldPart)
    expect(screen.getAllByText('Read from a picture: check it.')).toHaveLength(2)
    fill('Part number that the source names', 'OM-7731')
    expect(screen.getAllByText('Read from a picture: check it.')).toHaveLength(1)
    await press('I checked it against the label')
    expect(screen.queryByText('Read from a picture: check it.')).toBeNull()
    expect(text().value).toBe('CLOSE -.58 WC')
  })

  test('a lost decimal point is shown as doubtful with the reason, and what was typed is named before it is replaced', async () => {
    vi.mocked(readLabelPhoto).mockResolvedValue(label('PF 64 IN WC'))
    await open()
    fill('Letter for letter, as printed, written or said', '.64 WC')
    await press('Read the label in this photo')
    const [first] = listed('Ratings read from the photo')
    expect(first!.textContent).toContain('Doubtful: look twice.')
    expect(first!.textContent).toContain('A decimal point may be lost')
    expect(within(first!).getByRole('button').textContent).toBe(
      'Take “PF 64 IN WC” as the rating, in place of “.64 WC”',
    )
    expect(text().value).toBe('.64 WC')
  })

  test('says why nothing was read, and what to do', async () => {
    vi.mocked(readLabelPhoto).mockResolvedValue(failure('no-reader', 'The label reader did not start.'))
    await open()
    await press('Read the label in this photo')
    expect(screen.getByText('The label reader did not start.')).toBeDefined()
    vi.mocked(readLabelPhoto).mockRejectedValue(new Error('out of memory'))
    await press('Read it again')
    expect(document.body.textContent).toContain('Reading broke off (Error: out of memory)')
    vi.mocked(readLabelPhoto).mockResolvedValue(label('CLOSE -.58 WC'))
    await press('Read it again')
    expect(listed('Ratings read from the photo')).toHaveLength(1)
  })
})
