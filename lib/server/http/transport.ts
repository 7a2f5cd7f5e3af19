import { readFileSync } from 'node:fs'
import { type ProxyTest, readTrustedProxies } from './address'

/**
 * How browsers reach the server. A phone needs https for its service worker and camera, and a password must not
 * travel in the clear, so plain http is for this machine only, or for a named proxy that speaks https outwards.
 */
export type Transport =
  | { kind: 'own TLS'; certificate: Buffer; key: Buffer }
  | { kind: 'behind a proxy'; isProxy: ProxyTest; sameMachine: boolean }
  | { kind: 'this machine only' }

type Settings = Record<string, string | undefined>

/**
 * Reads INCHWATER_TLS_CERT with INCHWATER_TLS_KEY (files in PEM form), or INCHWATER_TRUSTED_PROXY.
 *
 * @throws RangeError, in a sentence for whoever starts the server, when they don't go together or can't be read
 */
export function readTransport(settings: Settings): Transport {
  const { INCHWATER_TLS_CERT: certificate, INCHWATER_TLS_KEY: key, INCHWATER_TRUSTED_PROXY: proxy } = settings
  if (Boolean(certificate) !== Boolean(key)) {
    throw new RangeError('INCHWATER_TLS_CERT and INCHWATER_TLS_KEY go together: set both, or neither.')
  }
  if (certificate && proxy) {
    throw new RangeError(
      'Set a certificate, or INCHWATER_TRUSTED_PROXY for a proxy that has one, but not both.',
    )
  }
  if (certificate && key) {
    return {
      kind: 'own TLS',
      certificate: readSetting('INCHWATER_TLS_CERT', certificate),
      key: readSetting('INCHWATER_TLS_KEY', key),
    }
  }
  if (proxy) {
    const sameMachine = proxy.split(',').every((entry) => ['127.0.0.1', '::1'].includes(entry.trim()))
    return { kind: 'behind a proxy', isProxy: readTrustedProxies(proxy), sameMachine }
  }
  return { kind: 'this machine only' }
}

/** The address to listen on: this machine alone, or undefined for all its addresses when others are to reach it. */
export function hostOf(transport: Transport): string | undefined {
  const forOthers =
    transport.kind === 'own TLS' || (transport.kind === 'behind a proxy' && !transport.sameMachine)
  return forOthers ? undefined : '127.0.0.1'
}

/** The address by which a browser on this machine reaches the server. */
export function localAddress(transport: Transport, port: number): string {
  return `${transport.kind === 'own TLS' ? 'https' : 'http'}://localhost:${port}`
}

/** The port that PORT names, else 3000. @throws RangeError when it is none */
export function portOf(setting = '3000'): number {
  if (/^\d{1,5}$/.test(setting) && Number(setting) <= 65535) return Number(setting)
  throw new RangeError(`PORT is "${setting}", which is no number from 0 to 65535.`)
}

function readSetting(name: string, file: string): Buffer {
  try {
    return readFileSync(file)
  } catch (cause) {
    throw new RangeError(`${name} names ${file}, which can't be read.`, { cause })
  }
}
