import { expect, test } from 'vitest'
import { codeReaderAt, labelReaderAt } from '@/lib/device/readers/addresses'
import { contentSecurityPolicy, securityHeaders } from '@/lib/server/http/securityHeaders'

const production = { nonce: 'bm9uY2U=', promiseTLS: true, dev: false, path: '/' }
const at = (path: string) => securityHeaders({ ...production, path })

test('in production no script and no style runs for being inline, and none is evaluated from text', () => {
  const policy = contentSecurityPolicy(production)
  expect(policy).not.toContain('unsafe-inline')
  expect(policy).not.toContain('unsafe')
  expect(policy).toContain("script-src 'self' 'nonce-bm9uY2U=' 'strict-dynamic'")
  expect(policy).toContain("frame-ancestors 'none'")
  expect(policy).toContain("base-uri 'none'")
})

test('the policy names no other host', () => {
  expect(contentSecurityPolicy(production)).not.toMatch(/https?:|\*/)
})

test('only the page that scans may open the camera, whatever stands behind its path', () => {
  expect(at('/scan')['permissions-policy']).toContain('camera=(self)')
  for (const path of ['/', '/report', '/scan/', '/scanner', '/api/records', '/readers/scan', ''])
    expect(at(path)['permissions-policy'], path).toContain('camera=()')
})

test('only the readers’ own files may compile WebAssembly, and they may do nothing else', () => {
  for (const path of [codeReaderAt, labelReaderAt])
    expect(at(`${path}/worker.js`)['content-security-policy']).toBe(
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'",
    )
  for (const path of ['/', '/scan', '/report', '/readers', '/x/readers/'])
    expect(at(path)['content-security-policy'], path).not.toContain('wasm')
})

test('nothing is sniffed, framed or told to other sites', () => {
  expect(securityHeaders(production)).toMatchObject({
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'strict-transport-security': 'max-age=31536000',
  })
})

test('TLS is promised only where it is to last', () => {
  expect(securityHeaders({ ...production, promiseTLS: false })).not.toHaveProperty(
    'strict-transport-security',
  )
})
