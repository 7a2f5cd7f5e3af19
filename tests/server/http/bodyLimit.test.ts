import { expect, test } from 'vitest'
import { mostBatchBytes, mostLogBytes, refuseBody } from '@/lib/server/http/bodyLimit'

const MiB = 1024 * 1024
const post = (path: string, bytes: number) =>
  refuseBody({ method: 'POST', path, contentLength: String(bytes), transferEncoding: undefined })

test('refuseBody lets a write of 1 MiB in, and not a byte more', () => {
  expect(post('/api/people/invitations', MiB)).toBeUndefined()
  expect(post('/api/people/invitations', MiB + 1)).toMatchObject({ status: 413, code: 'too-long' })
})

test('refuseBody gives photos and whole logs more room', () => {
  expect(post('/api/photos', 16 * MiB)).toBeUndefined()
  expect(post('/api/photos', 16 * MiB + 1)?.message).toContain('16 MiB')
  expect(post('/api/import/log', mostLogBytes)).toBeUndefined()
  expect(post('/api/import/log', mostLogBytes + 1)?.message).toContain('1024 MiB')
})

test('refuseBody lets a batch of records in up to the very limit of its route, and not a byte more', () => {
  expect(mostBatchBytes).toBe(5 * MiB)
  expect(post('/api/records', mostBatchBytes - 1)).toBeUndefined()
  expect(post('/api/records', mostBatchBytes)).toBeUndefined()
  expect(post('/api/records', mostBatchBytes + 1)).toMatchObject({ status: 413, code: 'too-long' })
})

test('refuseBody wants the length before the body', () => {
  const sent = { method: 'POST', path: '/api/records', contentLength: undefined, transferEncoding: 'chunked' }
  expect(refuseBody(sent)?.status).toBe(411)
})

test('refuseBody lets a write without a body and any read go on', () => {
  const sent = { path: '/api/auth/sign-out', contentLength: undefined, transferEncoding: undefined }
  expect(refuseBody({ ...sent, method: 'POST' })).toBeUndefined()
  expect(refuseBody({ ...sent, method: 'GET' })).toBeUndefined()
})
