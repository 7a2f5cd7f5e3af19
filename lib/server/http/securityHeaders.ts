/** What the headers depend on. `promiseTLS`: browsers shall come to this host over https only, for a year. */
type Circumstances = { nonce: string; dev: boolean; promiseTLS: boolean }

/**
 * The content-security policy (W3C CSP Level 3). Scripts run only with the request's nonce, or loaded by one that
 * did ('strict-dynamic'); styles come from our own files. WebAssembly may be compiled, for the label and code
 * readers. Development needs eval and inline styles, for error pages and live reload.
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
  return Object.entries(directives)
    .map(([name, sources]) => `${name} ${sources.join(' ')}`)
    .join('; ')
}

/** The headers of every answer. The camera is for labels and codes; nothing else of the device is asked for. */
export function securityHeaders(circumstances: Circumstances): Record<string, string> {
  return {
    'content-security-policy': contentSecurityPolicy(circumstances),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'permissions-policy': 'camera=(self), geolocation=(), microphone=(), payment=(), usb=()',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    // RFC 6797. Not for localhost, where it would shut out every other program's pages on this machine.
    ...(circumstances.promiseTLS ? { 'strict-transport-security': 'max-age=31536000' } : {}),
  }
}
