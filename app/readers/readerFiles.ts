import { codeReaderAt, labelReaderAt } from '@/lib/device/readers/addresses'

/** A file that a reader is made of: where it lies in this program’s folder, and what it is. */
export type ReaderFile = { from: string; type: string }

const script = 'text/javascript; charset=utf-8'
const tesseract = (name: string): ReaderFile => ({
  from: `node_modules/tesseract.js-core/${name}`,
  type: script,
})

/** Of the three a browser fetches the one that its processor can run; each holds only the newer recognition. */
const cores = ['relaxedsimd-lstm', 'simd-lstm', 'lstm'].map((kind) => `tesseract-core-${kind}.wasm.js`)

/**
 * Every file there is under /readers, by its address. What is asked for is looked up here and never made into a path,
 * so no address leads anywhere else.
 */
export const readerFiles: ReadonlyMap<string, ReaderFile> = new Map<string, ReaderFile>([
  [`${codeReaderAt}/worker.js`, { from: 'app/readers/codeWorker.js', type: script }],
  [`${codeReaderAt}/zxing.js`, { from: 'node_modules/zxing-wasm/dist/iife/reader/index.js', type: script }],
  [
    `${codeReaderAt}/zxing_reader.wasm`,
    { from: 'node_modules/zxing-wasm/dist/reader/zxing_reader.wasm', type: 'application/wasm' },
  ],
  [`${labelReaderAt}/worker.js`, { from: 'node_modules/tesseract.js/dist/worker.min.js', type: script }],
  ...cores.map((name): [string, ReaderFile] => [`${labelReaderAt}/${name}`, tesseract(name)]),
  [
    `${labelReaderAt}/eng.traineddata.gz`,
    {
      from: 'node_modules/@tesseract.js-data/eng/4.0.0_best_int/eng.traineddata.gz',
      type: 'application/gzip',
    },
  ],
])
