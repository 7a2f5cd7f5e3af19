import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type IncomingHttpHeaders, request, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { compressedFiles, takesBrotli } from '@/lib/server/http/compressed'
import { compressFiles } from '@/lib/server/prepare/buildPages.mjs'

const scratch = mkdtempSync(path.join(tmpdir(), 'compressed-'))
const script = `${'const reading = "suction at the port"\n'.repeat(200)}// –`
const style = '.reading { color: red }\n'.repeat(50)
let server: Server

beforeAll(async () => {
  mkdirSync(path.join(scratch, 'static/chunks/(team)'), { recursive: true })
  writeFileSync(path.join(scratch, 'static/chunks/(team)/a~1.js'), script)
  writeFileSync(path.join(scratch, 'static/chunks/b.css'), style)
  writeFileSync(path.join(scratch, 'static/chunks/b.css.map'), '{}')
  writeFileSync(path.join(scratch, 'secret.js'), 'secret')
  compressFiles(path.join(scratch, 'static'), path.join(scratch, 'brotli'))
  const answer = compressedFiles(path.join(scratch, 'brotli'))
  server = createServer(async (asked, response) => {
    if (!(await answer(asked, response))) response.end('from the pages')
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
})
afterAll(() => {
  server.close()
  rmSync(scratch, { recursive: true })
})

type Came = { headers: IncomingHttpHeaders; bytes: Buffer }

const ask = (address: string, accept = 'gzip, br', method = 'GET'): Promise<Came> =>
  new Promise((resolve, reject) => {
    const { port } = server.address() as AddressInfo
    const headers = { 'accept-encoding': accept }
    request({ host: '127.0.0.1', port, path: address, method, headers }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () => resolve({ headers: response.headers, bytes: Buffer.concat(parts) }))
    })
      .on('error', reject)
      .end()
  })

test('a file of the build comes smaller to whoever takes brotli, is the same, and may be kept for good', async () => {
  const { headers, bytes } = await ask('/_next/static/chunks/(team)/a~1.js?v=1')
  expect(brotliDecompressSync(bytes).toString()).toBe(script)
  expect(bytes.length).toBeLessThan(script.length / 10)
  expect(headers).toMatchObject({
    'content-type': 'application/javascript; charset=UTF-8',
    'content-encoding': 'br',
    'content-length': String(bytes.length),
    'cache-control': 'public, max-age=31536000, immutable',
    vary: 'accept-encoding',
  })
  const sheet = await ask('/_next/static/chunks/b.css')
  expect(brotliDecompressSync(sheet.bytes).toString()).toBe(style)
  expect(sheet.headers['content-type']).toBe('text/css; charset=UTF-8')
})

test('HEAD gets the headers alone', async () => {
  const { headers, bytes } = await ask('/_next/static/chunks/b.css', 'br', 'HEAD')
  expect(bytes).toHaveLength(0)
  expect(Number(headers['content-length'])).toBeGreaterThan(0)
})

test.each([
  ['/_next/static/chunks/b.css', 'gzip', 'GET'],
  ['/_next/static/chunks/b.css', 'br', 'POST'],
  ['/_next/static/chunks/b.css.map', 'br', 'GET'],
  ['/_next/static/chunks/c.js', 'br', 'GET'],
  ['/_next/static/../secret.js', 'br', 'GET'],
  ['/_next/static/..%2Fsecret.js', 'br', 'GET'],
  ['/', 'br', 'GET'],
])('%s for whoever takes %s, by %s, is left to the pages', async (address, accept, method) => {
  const { headers, bytes } = await ask(address, accept, method)
  expect(headers['content-encoding']).toBeUndefined()
  expect(bytes.toString()).toBe('from the pages')
})

test('where nothing was compressed, nothing is answered', async () => {
  const answer = compressedFiles(path.join(scratch, 'nowhere'))
  const nothing = { url: '/_next/static/chunks/b.css', method: 'GET', headers: { 'accept-encoding': 'br' } }
  expect(await answer(nothing as never, {} as never)).toBe(false)
})

test.each([
  ['br', true],
  ['gzip, deflate, br, zstd', true],
  ['gzip;q=1.0, BR ; q=0.5', true],
  ['br;q=0', false],
  ['br; q=0.000', false],
  ['gzip, x-br', false],
  ['', false],
  [undefined, false],
])('Accept-Encoding %s takes brotli: %s', (header, takes) => {
  expect(takesBrotli(header)).toBe(takes)
})
