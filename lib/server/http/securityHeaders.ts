/** What the headers depend on: the request's nonce, whether it came over https, and whether this is development. */
type Circumstances = { nonce: string; secure: boolean; dev: boolean }

/**
 * The content-security policy (W3C CSP Level 3). Scripts run only with the request's nonce, or loaded by one that
 * did ('strict-dynamic'); styles come from our own files. WebAssembly may be compiled, for the label and code
 * readers. Development needs eval and inline styles, for error pages and live reload.
 */
export function contentSecurityPolicy({ nonce, dev }: Circumstances): string {
  const directives = {
    'default-src': ["'self'"],
    'script-src': [
      "'self'",
      `'nonce-${nonce}'`,
      "'strict-dynamic'",
      "'wasm-unsafe-eval'",
      ...(dev ? ["'unsafe-eval'"] : []),
    ],
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
    // One year (RFC 6797).
    ...(circumstances.secure ? { 'strict-transport-security': 'max-age=31536000' } : {}),
  }
}
