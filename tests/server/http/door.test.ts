import { type IncomingHttpHeaders, request as send } from 'node:http'
import { afterEach, expect, test } from 'vitest'
import { readTrustedProxies } from '@/lib/server/http/address'
import { door } from '@/lib/server/http/door'
import { type Listening, listen } from '@/lib/server/http/listen'
import type { Transport } from '@/lib/server/http/transport'

const thisMachine: Transport = { kind: 'this machine only' }
const behind = (proxies: string): Transport => ({
  kind: 'behind a proxy',
  isProxy: readTrustedProxies(proxies),
  sameMachine: true,
})

const open: Listening[] = []
afterEach(() => open.splice(0).forEach(({ server }) => void server.close()))

/** Knocks at a real server, and tells what came back and which headers got inside. */
async function knock(
  transport: Transport,
  headers: Record<string, string>,
  options: { path?: string; body?: string } = {},
) {
  let inside: IncomingHttpHeaders | undefined
  const handler = door(transport, false, (request, response) => {
    inside = { ...request.headers }
    request.resume()
    response.end('in')
  })
  const listening = await listen(transport, 0, handler)
  open.push(listening)
  return new Promise<{
    status: number
    headers: IncomingHttpHeaders
    inside: IncomingHttpHeaders | undefined
  }>((resolve, reject) => {
    const sent = send(
      {
        host: '127.0.0.1',
        port: listening.port,
        path: options.path ?? '/',
        method: options.body ? 'POST' : 'GET',
        headers,
      },
      (response) => {
        response.resume()
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, inside }),
        )
      },
    )
    sent.on('error', reject)
    sent.end(options.body)
  })
}

test('the door takes away what only the server may say, and says it itself', async () => {
  const { inside } = await knock(thisMachine, {
    'x-inchwater-address': '203.0.113.1',
    'x-forwarded-for': '203.0.113.1',
    'x-forwarded-proto': 'https',
    'x-forwarded-host': 'elsewhere.example',
    forwarded: 'for=203.0.113.1',
    'x-real-ip': '203.0.113.1',
    'x-middleware-subrequest': 'middleware',
    'content-security-policy': "script-src 'nonce-chosen'",
    'accept-language': 'en',
  })
  expect(inside).toMatchObject({
    'x-inchwater-address': '127.0.0.1',
    'x-forwarded-proto': 'http',
    'accept-language': 'en',
  })
  expect(JSON.stringify(inside)).not.toMatch(/203\.0\.113|elsewhere|subrequest|chosen/)
})

test('the door passes on the last hop when the named proxy is asking', async () => {
  const { inside } = await knock(behind('127.0.0.1'), { 'x-forwarded-for': '203.0.113.1, 192.0.2.7' })
  expect(inside).toMatchObject({ 'x-inchwater-address': '192.0.2.7', 'x-forwarded-proto': 'https' })
})

test('the door is shut to everybody but the named proxy', async () => {
  const { status, inside } = await knock(behind('10.20.0.5'), { 'x-forwarded-for': '10.20.0.5' })
  expect(status).toBe(403)
  expect(inside).toBeUndefined()
})

test('the door answers to no name but localhost when there is no TLS', async () => {
  expect((await knock(thisMachine, { host: 'localhost:3000' })).status).toBe(200)
  expect((await knock(thisMachine, { host: '[::1]:3000' })).status).toBe(200)
  expect((await knock(thisMachine, { host: 'rebound.example' })).status).toBe(421)
  expect((await knock(thisMachine, { host: 'localhost.elsewhere.example' })).status).toBe(421)
})

test('the door tells a person who is turned away on a page, and a program in JSON', async () => {
  const typeFor = async (accept: string) =>
    (await knock(thisMachine, { host: '192.0.2.7:3000', accept })).headers['content-type']
  expect(await typeFor('text/html,application/xhtml+xml')).toBe('text/html; charset=utf-8')
  expect(await typeFor('application/json')).toBe('application/json')
})

test('the door gives the page the same nonce that it tells the browser, and a new one each time', async () => {
  const first = await knock(thisMachine, {})
  const second = await knock(thisMachine, {})
  expect(first.inside?.['content-security-policy']).toBe(first.headers['content-security-policy'])
  expect(first.headers['content-security-policy']).not.toBe(second.headers['content-security-policy'])
})

test('the door promises TLS to a host of the team’s, never to localhost', async () => {
  const promised = async (transport: Transport, host: string) =>
    (await knock(transport, { host })).headers['strict-transport-security']
  expect(await promised(behind('127.0.0.1'), 'inchwater.example')).toBe('max-age=31536000')
  expect(await promised(behind('127.0.0.1'), 'localhost:3000')).toBeUndefined()
  expect(await promised(thisMachine, 'localhost:3000')).toBeUndefined()
})

test('the door keeps too long a body out, and one without its length', async () => {
  const long = await knock(
    thisMachine,
    { 'content-length': String(1024 * 1024 + 1) },
    { path: '/api/set-up', body: 'x' },
  )
  expect(long.status).toBe(413)
  const unmeasured = await knock(
    thisMachine,
    { 'transfer-encoding': 'chunked' },
    { path: '/api/set-up', body: 'x' },
  )
  expect(unmeasured.status).toBe(411)
  expect(unmeasured.inside).toBeUndefined()
})
