import { expect, test } from 'vitest'
import { contentSecurityPolicy, securityHeaders } from '@/lib/server/http/securityHeaders'

const production = { nonce: 'bm9uY2U=', promiseTLS: true, dev: false }

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

test('the camera is for our own pages only, and nothing is sniffed, framed or told to other sites', () => {
  expect(securityHeaders(production)).toMatchObject({
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'permissions-policy': expect.stringContaining('camera=(self)'),
    'strict-transport-security': 'max-age=31536000',
  })
})

test('TLS is promised only where it is to last', () => {
  expect(securityHeaders({ ...production, promiseTLS: false })).not.toHaveProperty(
    'strict-transport-security',
  )
})
