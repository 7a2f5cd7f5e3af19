/**
 * What the headers depend on. `path`: what is asked for, without its query. `promiseTLS`: browsers shall come to this
 * host over https only, for a year.
 */
type Circumstances = { nonce: string; dev: boolean; promiseTLS: boolean; path: string }

/**
 * The content-security policy of every page (W3C CSP Level 3). Scripts run only with the request's nonce, or loaded by
 * one that did ('strict-dynamic'); styles come from our own files. No page may compile WebAssembly: `readerPolicy`.
 * Development needs eval and inline styles, for error pages and live reload.
 */
export function contentSecurityPolicy({ nonce, dev }: Pick<Circumstances, 'nonce' | 'dev'>): string {
  const directives = {
    'default-src': ["'self'"],
    'script-src': ["'self'", `'nonce-${nonce}'`, "'strict-dynamic'", ...(dev ? ["'unsafe-eval'"] : [])],
    'style-src': ["'self'", dev ? "'unsafe-inline'" : `'nonce-${nonce}'`],
    'img-src': ["'self'", 'blob:', 'data:'],
    'font-src': ["'self'"],
    'connect-src': ["'self'", ...(dev ? ['ws:', 'wss:'] : [])],
    'worker-src': ["'self'"],
    'manifest-src': ["'self'"],
    'frame-src': ["'none'"],
    'object-src': ["'none'"],
    'base-uri': ["'none'"],
    'form-action': ["'self'"],
    'frame-ancestors': ["'none'"],
  }
  return written(directives)
}

/** Where the programs that read codes and labels are served. */
const readersPath = '/readers/'

/**
 * The policy of the code and label readers. Each runs in a worker, which is held to the policy that its own file came
 * with and not to its page's (CSP Level 3, 4.2.2). So 'wasm-unsafe-eval' is given to these files alone; they reach this
 * server alone, and no page, no picture and no cookie of a page is theirs to touch.
 */
const readerPolicy = (): string =>
  written({
    'default-src': ["'none'"],
    'script-src': ["'self'", "'wasm-unsafe-eval'"],
    'connect-src': ["'self'"],
  })

const written = (directives: Readonly<Record<string, readonly string[]>>): string =>
  Object.entries(directives)
    .map(([name, sources]) => `${name} ${sources.join(' ')}`)
    .join('; ')

/** The one page that opens the camera. Pictures are taken by the device's own camera program, which asks for nothing. */
const cameraPath = '/scan'

/** The headers of every answer. The camera is for the page that scans codes; nothing else of the device is asked for. */
export function securityHeaders(circumstances: Circumstances): Record<string, string> {
  const { path } = circumstances
  const camera = path === cameraPath ? 'camera=(self)' : 'camera=()'
  return {
    'content-security-policy': path.startsWith(readersPath)
      ? readerPolicy()
      : contentSecurityPolicy(circumstances),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'permissions-policy': `${camera}, geolocation=(), microphone=(), payment=(), usb=()`,
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    // RFC 6797. Not for localhost, where it would shut out every other program's pages on this machine.
    ...(circumstances.promiseTLS ? { 'strict-transport-security': 'max-age=31536000' } : {}),
  }
}
