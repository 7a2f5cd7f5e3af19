import { createServer, type Server } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import type { Handler } from './door'
import { hostOf, type Transport } from './transport'

/** The server can't listen; the message is a sentence for whoever started it. */
export class CannotListen extends Error {
  override name = 'CannotListen'
}

export type Listening = { server: Server; port: number }

/**
 * Listens on a port, with TLS or without.
 *
 * @param port 0 takes any that is free
 * @throws CannotListen when the port is busy or not allowed, or the certificate is none
 */
export function listen(transport: Transport, port: number, handler: Handler): Promise<Listening> {
  return new Promise((resolve, reject) => {
    const server = serverFor(transport, handler)
    server.once('error', (error: NodeJS.ErrnoException) => reject(sayWhy(error, port)))
    server.listen({ port, host: hostOf(transport) }, () =>
      resolve({ server, port: (server.address() as AddressInfo).port }),
    )
  })
}

function serverFor(transport: Transport, handler: Handler): Server {
  if (transport.kind !== 'own TLS') return createServer(handler)
  try {
    return createSecureServer({ cert: transport.certificate, key: transport.key }, handler)
  } catch (cause) {
    const why = 'INCHWATER_TLS_CERT and INCHWATER_TLS_KEY are not a certificate and its key in PEM form.'
    throw new CannotListen(why, { cause })
  }
}

function sayWhy(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code === 'EADDRINUSE') {
    return new CannotListen(
      `Port ${port} is in use by another program. Stop that one, or choose another port: PORT=${port + 1} npm start`,
      { cause: error },
    )
  }
  if (error.code === 'EACCES') {
    return new CannotListen(
      `This account may not open port ${port}. Choose one above 1023, e.g. PORT=3000.`,
      { cause: error },
    )
  }
  return error
}
