import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto'

/**
 * A cookie by which a browser shows that it signed in to an account before. Guesses from it are counted apart, so
 * that strangers who guess at the account can't keep its owner out (OWASP, "Slow Down Online Guessing Attacks with
 * Device Cookies"). It lets nobody in.
 */
export const deviceCookieName = (secure: boolean): string =>
  secure ? '__Host-inchwater.device' : 'inchwater.device'

const yearSeconds = 365 * 24 * 60 * 60

/** The Set-Cookie value for a browser that has just signed in under this folded name. */
export function deviceCookie(secret: string, signInName: string, secure: boolean): string {
  const device = randomBytes(16).toString('base64url')
  const value = `${device}.${sign(secret, device, signInName)}`
  return `${deviceCookieName(secure)}=${value}; Max-Age=${yearSeconds}; Path=/; HttpOnly; SameSite=Lax${secure ? '; Secure' : ''}`
}

/** The device's id, when the request carries a device cookie made for this folded name. */
export function knownDevice(
  headers: Headers,
  secret: string,
  signInName: string,
  secure: boolean,
): string | undefined {
  const named = `${deviceCookieName(secure)}=`
  const cookie = (headers.get('cookie') ?? '').split(/;\s*/).find((pair) => pair.startsWith(named))
  const [device, signature] = cookie?.slice(named.length).split('.') ?? []
  if (!device || !signature) return undefined
  const expected = Buffer.from(sign(secret, device, signInName))
  const given = Buffer.from(signature)
  return given.length === expected.length && timingSafeEqual(given, expected) ? device : undefined
}

const sign = (secret: string, device: string, signInName: string): string =>
  createHmac('sha256', secret)
    .update(JSON.stringify(['device', device, signInName]))
    .digest('base64url')
