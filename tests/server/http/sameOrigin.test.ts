import { expect, test } from 'vitest'
import { originOf } from '@/lib/server/http/origin'
import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'

const post = (headers: Record<string, string>, url = 'https://inchwater.example/api/people') =>
  new Request(url, { method: 'POST', headers })

// The values of Sec-Fetch-Site are those of W3C Fetch Metadata Request Headers, section 2.3.
test.each<[string, Record<string, string>, 'goes on' | 'is refused']>([
  ['our own page', { 'sec-fetch-site': 'same-origin', origin: 'https://inchwater.example' }, 'goes on'],
  [
    'our own page behind a proxy that rewrites the host',
    { 'sec-fetch-site': 'same-origin', origin: 'https://other.example' },
    'goes on',
  ],
  ['our own page in a browser without Sec-Fetch-Site', { origin: 'https://inchwater.example' }, 'goes on'],
  ['no browser at all', {}, 'goes on'],
  ['the address bar', { 'sec-fetch-site': 'none' }, 'goes on'],
  ['another site', { 'sec-fetch-site': 'cross-site', origin: 'https://elsewhere.example' }, 'is refused'],
  ['another site that hides its origin', { 'sec-fetch-site': 'cross-site', origin: 'null' }, 'is refused'],
  [
    'a sister host of the same site',
    { 'sec-fetch-site': 'same-site', origin: 'https://shop.inchwater.example' },
    'is refused',
  ],
  ['another site in a browser without Sec-Fetch-Site', { origin: 'https://elsewhere.example' }, 'is refused'],
  ['an opaque origin in a browser without Sec-Fetch-Site', { origin: 'null' }, 'is refused'],
  ['our own host over plain http', { origin: 'http://inchwater.example' }, 'is refused'],
  ['our own host on another port', { origin: 'https://inchwater.example:8443' }, 'is refused'],
  [
    '"none" together with a foreign origin',
    { 'sec-fetch-site': 'none', origin: 'https://elsewhere.example' },
    'is refused',
  ],
])('refuseCrossOrigin: a write from %s', (_who, headers, outcome) => {
  const refused = refuseCrossOrigin(post(headers))
  expect(refused?.status).toBe(outcome === 'is refused' ? 403 : undefined)
})

test('refuseCrossOrigin says what to do instead', async () => {
  const refused = refuseCrossOrigin(post({ 'sec-fetch-site': 'cross-site' }))
  expect(await refused?.json()).toEqual({
    ok: false,
    problem: { code: 'other-origin', message: expect.stringContaining('Open Inchwater itself') },
  })
})

test('originOf goes by the Host header and the scheme that our server names', () => {
  const headers = { host: 'shop.example:3000', 'x-forwarded-proto': 'https' }
  expect(originOf(post(headers, 'http://localhost:3000/api'))).toBe('https://shop.example:3000')
  expect(originOf(post({}, 'http://localhost:3000/api'))).toBe('http://localhost:3000')
})
