/**
 * The origin that a request was addressed to, e.g. `https://inchwater.example:3000`. The host is what the client
 * asked for; whether it came over TLS is told by x-forwarded-proto, which our own server sets and never takes
 * from a client.
 */
export function originOf(request: Request): string {
  const url = new URL(request.url)
  const host = request.headers.get('host') ?? url.host
  return `${isSecure(request.headers, request.url) ? 'https' : 'http'}://${host}`
}

/** Whether the client's own connection is https. Without a URL (in a server component) the header alone decides. */
export function isSecure(headers: Headers, url?: string): boolean {
  const scheme = headers.get('x-forwarded-proto')
  return scheme ? scheme === 'https' : (url?.startsWith('https:') ?? false)
}
