import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { hostOf, localAddress, portOf, readTransport } from '@/lib/server/http/transport'

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

test('portOf reads PORT, else takes 3000, and refuses what is no port', () => {
  expect([portOf(), portOf('8443'), portOf('0')]).toEqual([3000, 8443, 0])
  for (const setting of ['', 'three', '-1', '65536', '80.5', '0x50'])
    expect(() => portOf(setting)).toThrow(RangeError)
})

test('localAddress is https only when the server itself speaks TLS', () => {
  expect(localAddress(readTransport({ INCHWATER_TLS_CERT: file, INCHWATER_TLS_KEY: file }), 8443)).toBe(
    'https://localhost:8443',
  )
  expect(localAddress(readTransport({ INCHWATER_TRUSTED_PROXY: '127.0.0.1' }), 3000)).toBe(
    'http://localhost:3000',
  )
})
