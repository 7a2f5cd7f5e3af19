import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { addressHeader, clientAddress, plain } from './address'
import { refuseBody } from './bodyLimit'
import { securityHeaders } from './securityHeaders'
import type { Transport } from './transport'

export type Handler = (request: IncomingMessage, response: ServerResponse) => Promise<void> | void

/**
 * The door that every request comes through, before any page or route sees it. It refuses who may not knock here,
 * takes away the headers that only we may write, adds the client's true address and scheme, and sets the security
 * headers. The policy goes inwards as well: the page renderer reads the nonce from it.
 */
export function door(transport: Transport, dev: boolean, inside: Handler): Handler {
  const secure = transport.kind !== 'this machine only'
  return (request, response) => {
    const nonce = randomBytes(16).toString('base64')
    const policy = securityHeaders({
      nonce,
      dev,
      promiseTLS: secure && !isThisMachine(request.headers.host),
      path: pathOf(request),
    })
    for (const [name, value] of Object.entries(policy)) response.setHeader(name, value)
    const refusal = refuseVisitor(transport, request) ?? refuseBody(bodyOf(request))
    if (refusal) return turnAway(response, refusal, request.headers.accept)
    const peer = request.socket.remoteAddress ?? ''
    const forwardedFor = textOf(request.headers['x-forwarded-for'])
    const isProxy = transport.kind === 'behind a proxy' ? transport.isProxy : () => false
    for (const name of Object.keys(request.headers)) if (isOurs(name)) delete request.headers[name]
    request.headers[addressHeader] = clientAddress(peer, forwardedFor, isProxy)
    request.headers['x-forwarded-proto'] = secure ? 'https' : 'http'
    request.headers['content-security-policy'] = policy['content-security-policy']
    return inside(request, response)
  }
}

type Refused = { status: number; code: string; message: string }

function refuseVisitor(transport: Transport, request: IncomingMessage): Refused | undefined {
  if (transport.kind === 'behind a proxy' && !transport.isProxy(plain(request.socket.remoteAddress ?? ''))) {
    return { status: 403, code: 'not-the-proxy', message: 'This server is reached through its proxy only.' }
  }
  // A page elsewhere can point a name of its own at this machine (DNS rebinding); then the name tells.
  if (transport.kind === 'this machine only' && !isThisMachine(request.headers.host)) {
    return {
      status: 421,
      code: 'not-this-machine',
      message:
        'Without https this server answers to localhost only. On such an address a phone has no camera here and keeps no pages for use without a signal. Ask whoever runs the server for its https address.',
    }
  }
  return undefined
}

const isThisMachine = (host = ''): boolean => /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i.test(host)

/** Headers that the server and the page renderer take for their own words. */
const isOurs = (name: string): boolean =>
  /^(x-forwarded|x-inchwater|x-middleware|x-matched|x-invoke|x-nonce|x-real-ip|forwarded$|content-security-policy)/.test(
    name,
  )

const pathOf = ({ url = '/' }: IncomingMessage): string => url.split('?')[0]!

const textOf = (header: string | string[] | undefined): string | undefined =>
  Array.isArray(header) ? header.join(', ') : header

const bodyOf = (request: IncomingMessage) => ({
  method: request.method ?? 'GET',
  path: request.url ?? '/',
  contentLength: request.headers['content-length'],
  transferEncoding: request.headers['transfer-encoding'],
})

// The rest of a body that nobody reads is dropped with its connection.
function turnAway(response: ServerResponse, { status, code, message }: Refused, accept = ''): void {
  const isPerson = accept.includes('text/html')
  response.writeHead(status, {
    'content-type': isPerson ? 'text/html; charset=utf-8' : 'application/json',
    'cache-control': 'no-store',
    connection: 'close',
  })
  response.end(isPerson ? pageThatSays(message) : JSON.stringify({ ok: false, problem: { code, message } }))
}

/** For somebody who opened an address in a browser. The message is one of ours, so there is nothing to escape. */
const pageThatSays = (message: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Inchwater</title></head><body><main><h1>Inchwater</h1><p>${message}</p></main></body></html>`
