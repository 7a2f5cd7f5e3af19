import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { hostOf, readTransport } from '@/lib/server/http/transport'

const folder = mkdtempSync(path.join(tmpdir(), 'transport-'))
const file = path.join(folder, 'some.pem')
writeFileSync(file, 'PEM')

test('readTransport: without settings, plain http on this machine only', () => {
  expect(hostOf(readTransport({}))).toBe('127.0.0.1')
})

test('readTransport: with certificate and key, TLS for everybody', () => {
  const transport = readTransport({ INCHWATER_TLS_CERT: file, INCHWATER_TLS_KEY: file })
  expect(transport).toMatchObject({ kind: 'own TLS', certificate: Buffer.from('PEM') })
  expect(hostOf(transport)).toBeUndefined()
})

test('readTransport: a proxy on this machine keeps the port closed to others; one elsewhere opens it', () => {
  expect(hostOf(readTransport({ INCHWATER_TRUSTED_PROXY: '127.0.0.1' }))).toBe('127.0.0.1')
  expect(hostOf(readTransport({ INCHWATER_TRUSTED_PROXY: '10.20.0.5' }))).toBeUndefined()
})

test.each([
  [{ INCHWATER_TLS_CERT: file }, 'go together'],
  [{ INCHWATER_TLS_KEY: file }, 'go together'],
  [{ INCHWATER_TLS_CERT: file, INCHWATER_TLS_KEY: path.join(folder, 'none.pem') }, 'INCHWATER_TLS_KEY names'],
  [{ INCHWATER_TLS_CERT: file, INCHWATER_TLS_KEY: file, INCHWATER_TRUSTED_PROXY: '127.0.0.1' }, 'not both'],
  [{ INCHWATER_TRUSTED_PROXY: 'proxy.example' }, 'INCHWATER_TRUSTED_PROXY'],
])('readTransport refuses %o in a sentence', (settings, sentence) => {
  expect(() => readTransport(settings)).toThrow(RangeError)
  expect(() => readTransport(settings)).toThrow(sentence)
})
