import { BlockList, isIPv4, isIPv6 } from 'node:net'

/** Carries the client's address inwards. The server removes it from what clients send and sets it itself. */
export const addressHeader = 'x-inchwater-address'

/** The client's address as the server knows it, e.g. `192.0.2.7`, or `2001:db8:1:2::/64` for a whole IPv6 link. */
export function addressOf(request: Request): string {
  return request.headers.get(addressHeader) ?? 'unknown'
}

/** Whether an address is that of a named proxy. */
export type ProxyTest = (address: string) => boolean

/**
 * Reads INCHWATER_TRUSTED_PROXY: addresses or networks, with commas between.
 *
 * @throws RangeError when an entry is neither
 * @example readTrustedProxies('127.0.0.1, 10.20.0.0/16')('10.20.3.4') // true
 */
export function readTrustedProxies(setting: string): ProxyTest {
  const list = new BlockList()
  for (const entry of setting.split(',').map((part) => part.trim())) {
    const [address = '', bits, ...more] = entry.split('/')
    const family = familyOf(address)
    const longest = family === 'ipv4' ? 32 : 128
    const length = bits === undefined ? longest : Number(bits)
    if (!family || more.length > 0 || !/^\d{1,3}$/.test(String(length)) || length > longest) {
      throw new RangeError(
        `INCHWATER_TRUSTED_PROXY: "${entry}" is no address and no network such as 10.20.0.0/16.`,
      )
    }
    list.addSubnet(address, length, family)
  }
  return (address) => {
    const family = familyOf(address)
    return family !== undefined && list.check(address, family)
  }
}

/**
 * Who is asking: the address of the connection itself, or, when that is a named proxy, the last hop of
 * X-Forwarded-For, which is the one the proxy added. What stands before it was sent by the client and proves nothing.
 *
 * @returns an IPv4 address, or the /64 of an IPv6 address, because one subscriber holds that many at once
 */
export function clientAddress(
  socketAddress: string,
  forwardedFor: string | undefined,
  isProxy: ProxyTest,
): string {
  const peer = plain(socketAddress)
  const hop = plain(forwardedFor?.split(',').at(-1)?.trim() ?? '')
  return group(isProxy(peer) && familyOf(hop) ? hop : peer)
}

/** An IPv4 address written as IPv6 (`::ffff:192.0.2.7`, RFC 4291 2.5.5.2) in its plain form. */
export const plain = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/i, '')

const familyOf = (address: string): 'ipv4' | 'ipv6' | undefined =>
  isIPv4(address) ? 'ipv4' : isIPv6(address) ? 'ipv6' : undefined

function group(address: string): string {
  if (!isIPv6(address)) return address
  const [head = '', tail] = address.split('%')[0]!.split('::')
  const before = head.split(':').filter(Boolean)
  const after = tail?.split(':').filter(Boolean) ?? []
  const zeros = Array(Math.max(0, 8 - before.length - after.length)).fill('0')
  const first = [...before, ...zeros, ...after]
    .slice(0, 4)
    .map((part) => Number.parseInt(part, 16).toString(16))
  return `${first.join(':')}::/64`
}
