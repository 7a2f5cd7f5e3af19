import { afterEach, describe, expect, test, vi } from 'vitest'
import { codeReaderAt } from '@/lib/device/readers/addresses'
import { openCodeReader } from '@/lib/device/readers/codes'

const picture = { width: 1, height: 1, data: new Uint8ClampedArray(4) } as ImageData

/** A worker that answers as it is told to. */
class FakeWorker extends EventTarget {
  static last: FakeWorker
  readonly asked: { id: number }[] = []
  readonly terminate = vi.fn()
  readonly address: string
  constructor(address: string) {
    super()
    this.address = address
    FakeWorker.last = this
  }
  postMessage(question: { id: number }) {
    this.asked.push(question)
  }
  say(data: object) {
    this.dispatchEvent(new MessageEvent('message', { data }))
  }
}

const ownDetector = (formats: string[]) =>
  class {
    static getSupportedFormats = async () => formats
    readonly options: { formats: string[] }
    constructor(options: { formats: string[] }) {
      this.options = options
    }
    detect = async () => [{ rawValue: this.options.formats.join(' '), format: 'qr_code', cornerPoints: [] }]
  }

afterEach(() => void vi.unstubAllGlobals())

describe('openCodeReader()', () => {
  test('takes the browser’s own detector where it knows QR codes and Code 128, for formats with a check', async () => {
    vi.stubGlobal('BarcodeDetector', ownDetector(['qr_code', 'code_128', 'itf', 'codabar', 'ean_13']))
    const reader = await openCodeReader()
    expect(await reader.read(picture)).toEqual([{ text: 'qr_code code_128 ean_13', format: 'qr_code' }])
  })

  test.each([
    ['there is none', undefined],
    ['it knows QR codes only', ownDetector(['qr_code'])],
  ])('asks this server’s own reader where %s', async (_, detector) => {
    vi.stubGlobal('BarcodeDetector', detector)
    vi.stubGlobal('Worker', FakeWorker)
    const reader = await openCodeReader()
    expect(FakeWorker.last.address).toBe(`${codeReaderAt}/worker.js`)
    const [first, second] = [reader.read(picture), reader.read(picture)]
    const [one, two] = FakeWorker.last.asked
    FakeWorker.last.say({ id: two!.id, codes: [{ text: 'B', format: 'Code128' }] })
    FakeWorker.last.say({ id: one!.id, codes: [] })
    expect(await first).toEqual([])
    expect(await second).toEqual([{ text: 'B', format: 'Code128' }])
    reader.close()
    expect(FakeWorker.last.terminate).toHaveBeenCalledOnce()
  })

  test('a reader that breaks, or cannot be fetched, fails what was asked and what is asked after', async () => {
    vi.stubGlobal('Worker', FakeWorker)
    const reader = await openCodeReader()
    const first = reader.read(picture)
    FakeWorker.last.say({ id: FakeWorker.last.asked[0]!.id, trouble: 'out of memory' })
    await expect(first).rejects.toThrow('out of memory')
    const second = reader.read(picture)
    FakeWorker.last.dispatchEvent(new Event('error'))
    await expect(second).rejects.toThrow('could not be fetched')
    await expect(reader.read(picture)).rejects.toThrow('could not be fetched')
  })
})
