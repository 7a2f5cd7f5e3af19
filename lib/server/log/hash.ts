import { hash } from 'node:crypto'

/** The columns of an entry that its hash covers. */
export type Header = {
  seq: number
  id: string
  kind: string
  version: number
  author: string
  device: string
  saidAt: string
  receivedAt: string
  clockShiftMs: number
}

/** What the first entry has in place of the hash of the one before it. */
export const noPreviousHash = '0'.repeat(64)

/**
 * SHA-256 (FIPS 180-4) of the salt followed by the canonical bytes, in lower-case hexadecimal. The salt, 32
 * hexadecimal digits, keeps what was withheld from being guessed by trying values against the hash.
 */
export const contentHashOf = (salt: string, bytes: string): string => sha256(salt + bytes)

/**
 * SHA-256 of the previous hash, the content hash and the header as canonical JSON (RFC 8785), all as text. Each
 * hash so depends on everything before it.
 */
export const entryHashOf = (previousHash: string, contentHash: string, header: Header): string =>
  sha256(previousHash + contentHash + canonicalHeader(header))

const sha256 = (text: string): string => hash('sha256', text, 'hex')

/** RFC 8785 for an object that is flat and of known fields: sorted by name, serialized as ECMAScript does. */
const canonicalHeader = (header: Header): string =>
  JSON.stringify({
    author: header.author,
    clockShiftMs: header.clockShiftMs,
    device: header.device,
    id: header.id,
    kind: header.kind,
    receivedAt: header.receivedAt,
    saidAt: header.saidAt,
    seq: header.seq,
    version: header.version,
  })
