import { act, cleanup, fireEvent, screen, within } from '@testing-library/react'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { ScanScreen } from '@/app/scan/ScanScreen'
import { openCamera } from '@/lib/device/readers/camera'
import { type CodeReader, openCodeReader } from '@/lib/device/readers/codes'
import { pixelsOf, pixelsOfFile } from '@/lib/device/readers/pixels'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
vi.mock('@/lib/device/readers/camera')
vi.mock('@/lib/device/readers/codes')
vi.mock('@/lib/device/readers/pixels')

const code = '0123456789A2'
const tag = held([['01920000-0000-7000-8000-0000000000f0', 'tag', { code, furnaceId: ids.furnace }]])
const pixels = { width: 4, height: 3 } as ImageData

beforeEach(() => {
  vi.clearAllMocks()
  vi.mocked(openCamera).mockResolvedValue({ ok: false, why: 'no camera' })
  vi.mocked(pixelsOf).mockReturnValue(pixels)
  vi.mocked(pixelsOfFile).mockResolvedValue(pixels)
  vi.spyOn(HTMLMediaElement.prototype, 'play').mockResolvedValue()
})

/** A reader that finds these codes in the first picture, the second, and so on; the last ones for ever. */
const finding = (...pictures: string[][]): CodeReader => {
  const reader = {
    read: vi.fn(async () =>
      ((pictures.length > 1 ? pictures.shift() : pictures[0]) ?? []).map((text) => ({
        text,
        format: 'QRCode',
      })),
    ),
    close: vi.fn(),
  }
  vi.mocked(openCodeReader).mockResolvedValue(reader)
  return reader
}
const open = async (address = '/scan', records = [...equipmentRecords, ...tag]) => {
  openAt(address)
  const device = fakeDevice({ records })
  const drawn = await act(async () => renderOn(device, <ScanScreen />))
  return { device, ...drawn }
}
const typeCode = async (text: string) => {
  fill('Or type what is printed beside it', text)
  await press('Look it up')
}
const choosePicture = (file = new File(['x'], 'label.jpg', { type: 'image/jpeg' })) =>
  act(async () => {
    fireEvent.change(screen.getByLabelText('Or read it from a picture'), { target: { files: [file] } })
    await new Promise((done) => setTimeout(done, 0))
  })

describe('ScanScreen', () => {
  test.each([
    ['plain http', /https addresses only/],
    ['no camera', /no camera\. Choose a picture/],
    ['refused', /refused\. Allow it .* settings/],
    ['in use', /Another program holds the camera/],
    ['not here', /gives pages no camera/],
  ] as const)(
    'without a camera (%s) says why and what to do instead, and keeps the other two ways',
    async (why, words) => {
      vi.mocked(openCamera).mockResolvedValue({ ok: false, why })
      const { container } = await open()
      expect(screen.getByRole('alert').textContent).toMatch(words)
      expect(screen.getByLabelText('Or read it from a picture')).toBeDefined()
      expect(screen.getByLabelText('Or type what is printed beside it')).toBeDefined()
      expect(await accessibilityFaults(container)).toEqual([])
      cleanup()
    },
  )

  test('the camera is tried again when asked', async () => {
    await open()
    expect(openCamera).toHaveBeenCalledTimes(1)
    await press('Try the camera again')
    expect(openCamera).toHaveBeenCalledTimes(2)
  })

  test('switches the torch; where the camera refuses, says so and what to do, and tries again when asked', async () => {
    const torch = vi.fn(async (_on: boolean) => {})
    const stream = { getTracks: () => [] } as unknown as MediaStream
    vi.mocked(openCamera).mockResolvedValue({ ok: true, stream, torch, close() {} })
    finding([])
    await open()
    torch.mockRejectedValueOnce(new DOMException('Too hot.', 'OperationError'))
    await press('Torch on')
    expect(screen.getByRole('alert').textContent).toContain('light could not be switched on')
    expect(screen.getByRole('button', { name: 'Torch on', pressed: false })).toBeDefined()
    await press('Torch on')
    expect(torch.mock.calls).toEqual([[true], [true]])
    expect(screen.queryByRole('alert')).toBeNull()
    torch.mockRejectedValueOnce(new DOMException('No.', 'OperationError'))
    await press('Torch off')
    expect(screen.getByRole('alert').textContent).toContain('could not be switched off')
    expect(screen.getByRole('button', { name: 'Torch off', pressed: true })).toBeDefined()
    cleanup()
  })

  test('shows a typed number letter for letter, and the switch that it belongs to; records nothing', async () => {
    const { device } = await open()
    await typeCode(' om-7731 ')
    expect(screen.getByText('om-7731')).toBeDefined()
    const results = within(screen.getByRole('list', { name: 'On file' })).getAllByRole('link')
    expect(results.map((link) => link.getAttribute('href'))).toEqual([`/setpoint?position=${ids.low}`])
    expect(device.added).toEqual([])
    await press('Scan another')
    expect(screen.getByLabelText('Or type what is printed beside it')).toBeDefined()
  })

  test('an empty field is said to be empty', async () => {
    await open()
    await typeCode('  ')
    expect(document.body.textContent).toContain('Type what is printed beside the code.')
  })

  test('reads a picture, and says what to do when there is no code in it or it is no picture', async () => {
    const reader = finding(['OM-8802', `https://x.example/t?c=${code}`])
    await open()
    await choosePicture()
    expect(screen.getAllByRole('heading', { name: 'Read' })).toHaveLength(2)
    expect(screen.getByRole('link', { name: /^Furnace: Mill Row 12/ }).getAttribute('href')).toBe(
      `/furnace?id=${ids.furnace}`,
    )
    expect(reader.close).toHaveBeenCalled()
    await press('Scan another')
    finding([])
    await choosePicture()
    expect(document.body.textContent).toContain('No code was found in this picture.')
    vi.mocked(pixelsOfFile).mockResolvedValue(undefined)
    await choosePicture()
    expect(document.body.textContent).toContain('no picture that the browser can open')
  })

  test('a reader that does not start is told with its reason, and typing still works', async () => {
    vi.mocked(openCodeReader).mockRejectedValue(new Error('its files could not be fetched'))
    await open()
    await choosePicture()
    expect(
      screen
        .getAllByRole('alert')
        .map(({ textContent }) => textContent)
        .join(),
    ).toContain('its files could not be fetched')
  })

  test('the camera takes what stood in two pictures running, and is switched off then', async () => {
    vi.useFakeTimers()
    try {
      const close = vi.fn()
      vi.mocked(openCamera).mockResolvedValue({ ok: true, stream: {} as MediaStream, close })
      vi.spyOn(HTMLVideoElement.prototype, 'videoWidth', 'get').mockReturnValue(640)
      finding([], ['MISREAD'], ['OM-7731'], ['OM-7731'])
      openAt('/scan')
      renderOn(fakeDevice({ records: equipmentRecords }), <ScanScreen />)
      await act(() => vi.advanceTimersByTimeAsync(400))
      expect(screen.queryByRole('heading', { name: 'Read' })).toBeNull()
      await act(() => vi.advanceTimersByTimeAsync(400))
      expect(screen.getByText('OM-7731', { selector: 'q' })).toBeDefined()
      expect(document.body.textContent).not.toContain('MISREAD')
      expect(close).toHaveBeenCalled()
    } finally {
      vi.useRealTimers()
    }
  })

  test('for a form that wants a furnace, a tag or serial number leads back with it', async () => {
    const back = `/scan?take=furnace&then=${encodeURIComponent('/cases/new')}`
    await open(back)
    await typeCode('0123-4567-89A2')
    const href = `/cases/new?on=${ids.furnace}`
    expect(screen.getByRole('link', { name: /^Take Mill Row 12/ }).getAttribute('href')).toBe(href)
    await press('Scan another')
    await typeCode('S2204-118')
    expect(screen.getByRole('link', { name: /^Take Mill Row 12/ }).getAttribute('href')).toBe(href)
  })

  test('for a form that wants a part number, what was read leads back as it is, on file or not', async () => {
    await open(`/scan?take=part&then=${encodeURIComponent('/report?position=p')}`)
    await typeCode('ZQ-0099/1')
    expect(screen.getByRole('link', { name: 'Take it as the part number' }).getAttribute('href')).toBe(
      '/report?position=p&read=ZQ-0099%2F1',
    )
    expect(document.body.textContent).toMatch(/Not on file as read|Nothing on file is like it/)
  })

  test('a tag on no furnace leads to the question which, with the furnace that it was scanned at', async () => {
    await open(`/scan?furnace=${ids.bareFurnace}`, equipmentRecords)
    await typeCode('0123-4567-89A2')
    expect(screen.getByRole('link', { name: 'Say which furnace it is on' }).getAttribute('href')).toBe(
      `/t?c=${code}&furnace=${ids.bareFurnace}`,
    )
  })
})
