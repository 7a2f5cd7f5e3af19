import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import { expect, test } from 'vitest'
import { contentHashOf, entryHashOf, type Header, noPreviousHash } from '@/lib/server/log/hash'

const header: Header = Object.freeze({
  seq: 7,
  id: '019b0a5e-7c00-7000-8000-000000000001',
  kind: 'remark',
  version: 2,
  author: 'Żółć "9"\\',
  device: 'phone\u0000\u001f\u2028',
  saidAt: '2026-01-12T13:00:00+01:00',
  receivedAt: '2026-01-12T12:00:01.000Z',
  clockShiftMs: -3_600_000,
})

test('contentHashOf(salt, bytes) gives the examples for SHA-256 that NIST publishes with FIPS 180-4', () => {
  expect(contentHashOf('a', 'bc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  expect(contentHashOf('abcdbcdecdefdefgefghfghighij', 'hijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  )
})

test('contentHashOf(salt, bytes) hashes the bytes of UTF-8', () => {
  const bytes = '{"text":"° ö 😀"}'
  const expected = createHash('sha256')
    .update(Buffer.from(`salt${bytes}`, 'utf8'))
    .digest('hex')
  expect(contentHashOf('salt', bytes)).toBe(expected)
})

test('entryHashOf(previous, content, header) covers the two hashes and the header as canonical JSON', () => {
  const contentHash = contentHashOf('salt', '{}')
  const expected = createHash('sha256')
    .update(noPreviousHash)
    .update(contentHash)
    .update(canonicalize(header) ?? '')
    .digest('hex')
  expect(entryHashOf(noPreviousHash, contentHash, header)).toBe(expected)
})

test('entryHashOf(previous, content, header) changes with every part of what it covers', () => {
  const contentHash = contentHashOf('salt', '{}')
  const others = [
    entryHashOf('1'.repeat(64), contentHash, header),
    entryHashOf(noPreviousHash, contentHashOf('salt', '{ }'), header),
    ...Object.entries(header).map(([column, value]) =>
      entryHashOf(noPreviousHash, contentHash, {
        ...header,
        [column]: typeof value === 'number' ? value + 1 : `${value}.`,
      }),
    ),
  ]
  const all = [entryHashOf(noPreviousHash, contentHash, header), ...others]
  expect(new Set(all).size).toBe(12)
})
