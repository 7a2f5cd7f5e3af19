import { codeReaderAt } from './addresses'

/** What one code says, letter for letter, and the kind of code that it is, e.g. `QRCode` or `code_128`. */
export type ReadCode = { text: string; format: string }

/** Finds the codes in a picture. `close` lets go of it; what is under way then is never answered. */
export type CodeReader = {
  read(picture: ImageData): Promise<ReadCode[]>
  close(): void
}

/** The browser's own detector (W3C Accelerated Shape Detection, Barcode Detection API), as far as it is used here. */
type OwnDetector = { detect(picture: ImageData): Promise<{ rawValue: string; format: string }[]> }
type OwnDetectorClass = {
  new (options: { formats: string[] }): OwnDetector
  getSupportedFormats(): Promise<string[]>
}

/**
 * Formats that carry a check of their own, by the browser's names; as in app/readers/codeWorker.js. The browser's own
 * detector is taken where it knows the two that parts and tags have most.
 */
const formats = [
  'qr_code',
  'data_matrix',
  'code_128',
  'code_39',
  'code_93',
  'ean_13',
  'ean_8',
  'upc_a',
  'upc_e',
  'pdf417',
]
const needed = ['qr_code', 'code_128']

/** Opens the browser's own reader where there is one that serves, else the one that this server has. */
export async function openCodeReader(): Promise<CodeReader> {
  return (await openOwnReader()) ?? openServedReader()
}

async function openOwnReader(): Promise<CodeReader | undefined> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: OwnDetectorClass }
  if (BarcodeDetector === undefined) return undefined
  const supported = await BarcodeDetector.getSupportedFormats()
  if (!needed.every((format) => supported.includes(format))) return undefined
  const detector = new BarcodeDetector({ formats: formats.filter((format) => supported.includes(format)) })
  return {
    read: async (picture) =>
      (await detector.detect(picture)).map(({ rawValue, format }) => ({ text: rawValue, format })),
    close() {},
  }
}

type Answer = { id: number; codes: ReadCode[] } | { id: number; trouble: string }

function openServedReader(): CodeReader {
  const worker = new Worker(`${codeReaderAt}/worker.js`)
  const asked = new Map<number, { resolve(codes: ReadCode[]): void; reject(cause: Error): void }>()
  let lastId = 0
  let broken: Error | undefined
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    const waiting = asked.get(data.id)
    asked.delete(data.id)
    if ('codes' in data) waiting?.resolve(data.codes)
    else waiting?.reject(new Error(data.trouble))
  })
  worker.addEventListener('error', (event) => {
    event.preventDefault()
    broken = new Error(event.message || 'its files could not be fetched')
    for (const { reject } of asked.values()) reject(broken)
    asked.clear()
  })
  return {
    read: (picture) =>
      new Promise((resolve, reject) => {
        if (broken !== undefined) return reject(broken)
        lastId += 1
        asked.set(lastId, { resolve, reject })
        worker.postMessage({ id: lastId, picture })
      }),
    close: () => worker.terminate(),
  }
}
