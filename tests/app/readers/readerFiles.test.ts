import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { GET } from '@/app/readers/[...id]/route'
import { readerFiles } from '@/app/readers/readerFiles'
import { codeReaderAt, labelReaderAt } from '@/lib/device/readers/addresses'

const ask = (path: string) => GET(new Request(`http://localhost${path}`))
const versionOf = (name: string): string =>
  (JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8')) as { version: string }).version

describe('GET /readers/…', () => {
  test.each([...readerFiles])('%s answers its file, with its type, kept for a year', async (path, file) => {
    expect(existsSync(file.from)).toBe(true)
    const answer = await ask(path)
    expect(answer.status).toBe(200)
    expect(answer.headers.get('content-type')).toBe(file.type)
    expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    expect(answer.headers.get('content-encoding')).toBeNull()
    expect(Buffer.from(await answer.arrayBuffer()).equals(readFileSync(file.from))).toBe(true)
  })

  test('WebAssembly and the letters’ data are what they say they are', async () => {
    const wasm = new Uint8Array(await (await ask(`${codeReaderAt}/zxing_reader.wasm`)).arrayBuffer())
    // The magic number of the WebAssembly binary format (W3C WebAssembly Core, 5.5.16).
    expect([...wasm.subarray(0, 4)]).toEqual([0, 0x61, 0x73, 0x6d])
    const data = await (await ask(`${labelReaderAt}/eng.traineddata.gz`)).arrayBuffer()
    expect(gunzipSync(Buffer.from(data)).byteLength).toBeGreaterThan(1_000_000)
  })

  test('no other address answers a file, however it is written', async () => {
    const outside = [
      '/readers/../package.json',
      '/readers/%2e%2e/package.json',
      `${codeReaderAt}/../../package.json`,
      `${codeReaderAt}/..%2f..%2fpackage.json`,
      `${codeReaderAt}//worker.js`,
      `${codeReaderAt}/worker.js/`,
      `${codeReaderAt}/worker.js%00`,
      `${codeReaderAt}/..\\..\\package.json`,
      '/readers/node_modules/zxing-wasm/package.json',
      '/readers/__proto__',
      '/readers/',
    ]
    for (const path of outside) expect((await ask(path)).status, path).toBe(404)
    await fc.assert(
      fc.asyncProperty(fc.webPath(), async (path) => {
        expect((await ask(`/readers${path}`)).status).toBe(404)
      }),
      { numRuns: 50 },
    )
  })

  test('an address has the version of what it serves in it', () => {
    expect(codeReaderAt).toContain(`zxing-${versionOf('zxing-wasm')}`)
    expect(labelReaderAt).toContain(`tesseract-${versionOf('tesseract.js')}`)
    expect(versionOf('tesseract.js-core')).toMatch(/^7\./)
  })

  test('every package that something is served of is asked for by its exact version', () => {
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      dependencies: Record<string, string>
    }
    const served = [...readerFiles.values()].flatMap(
      ({ from }) => /^node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(from)?.[1] ?? [],
    )
    expect(new Set(served).size).toBe(4)
    for (const name of served) expect([name, dependencies[name]]).toEqual([name, versionOf(name)])
  })

  test('our own reader of codes is the one that its address was given for', () => {
    // Kept for ever under its name: when this changes, change the last number of `codeReaderAt` with it.
    const hash = createHash('sha256').update(readFileSync('app/readers/codeWorker.js')).digest('hex')
    expect([codeReaderAt, hash.slice(0, 16)]).toEqual(['/readers/codes-zxing-3.1.6-1', '99f1484c655fe4ad'])
  })
})
