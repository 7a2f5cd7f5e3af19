import { expect, test } from 'vitest'
import { addressOf, clientAddress, readTrustedProxies } from '@/lib/server/http/address'

const nobody = () => false
const proxy = readTrustedProxies('10.20.0.5')

// Addresses are from the blocks kept for documentation: RFC 5737 (IPv4), RFC 3849 (IPv6).

test('clientAddress is the address of the connection, whatever X-Forwarded-For a client makes up', () => {
  expect(clientAddress('192.0.2.7', '203.0.113.1', nobody)).toBe('192.0.2.7')
  expect(clientAddress('192.0.2.7', '203.0.113.2, 203.0.113.3', proxy)).toBe('192.0.2.7')
})

test('clientAddress takes the last hop, the one that the named proxy added', () => {
  expect(clientAddress('10.20.0.5', '203.0.113.1, 192.0.2.7', proxy)).toBe('192.0.2.7')
  expect(clientAddress('10.20.0.5', '192.0.2.7', proxy)).toBe('192.0.2.7')
})

test('clientAddress falls back on the proxy itself when it adds no address', () => {
  expect(clientAddress('10.20.0.5', undefined, proxy)).toBe('10.20.0.5')
  expect(clientAddress('10.20.0.5', '192.0.2.7, unknown', proxy)).toBe('10.20.0.5')
})

test('clientAddress reads IPv4 written as IPv6 (RFC 4291 2.5.5.2)', () => {
  expect(clientAddress('::ffff:192.0.2.7', undefined, nobody)).toBe('192.0.2.7')
  expect(clientAddress('::ffff:10.20.0.5', '192.0.2.9', proxy)).toBe('192.0.2.9')
})

test.each([
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
  ['2001:db8:1:2::9', '2001:db8:1:2::/64'],
  ['2001:0DB8:0001:0002::1', '2001:db8:1:2::/64'],
  ['2001:db8::1', '2001:db8:0:0::/64'],
  ['::1', '0:0:0:0::/64'],
  ['fe80::1%eth0', 'fe80:0:0:0::/64'],
])('clientAddress counts an IPv6 subscriber as one: %s is of %s', (address, network) => {
  expect(clientAddress(address, undefined, nobody)).toBe(network)
})

test('readTrustedProxies reads addresses and networks', () => {
  const isProxy = readTrustedProxies('127.0.0.1, 10.20.0.0/16, 2001:db8::/32')
  expect(['127.0.0.1', '10.20.255.1', '2001:db8:9::1'].map(isProxy)).toEqual([true, true, true])
  expect(['127.0.0.2', '10.21.0.1', '2001:db9::1', '', 'proxy'].map(isProxy)).toEqual([
    false,
    false,
    false,
    false,
    false,
  ])
})

test.each(['proxy.example', '10.20.0.0/33', '10.20.0.0/x', '10.20.0.0/8/8', '', '10.20.0.1,'])(
  'readTrustedProxies refuses "%s" by name',
  (setting) => {
    expect(() => readTrustedProxies(setting)).toThrow(RangeError)
    expect(() => readTrustedProxies(setting)).toThrow('INCHWATER_TRUSTED_PROXY')
  },
)

test('addressOf reads what the server wrote, and puts requests without it in one bucket', () => {
  const request = (headers: Record<string, string>) => new Request('http://localhost/', { headers })
  expect(addressOf(request({ 'x-inchwater-address': '192.0.2.7' }))).toBe('192.0.2.7')
  expect(addressOf(request({ 'x-forwarded-for': '192.0.2.7' }))).toBe('unknown')
})
