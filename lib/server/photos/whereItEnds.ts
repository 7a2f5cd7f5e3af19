/** The formats that are kept, as the picture library calls them. */
export type PictureFormat = 'jpeg' | 'png' | 'webp'

/**
 * What the first bytes say a file is, whatever its name or its sender says; undefined for all that is not kept.
 * JPEG: ITU-T T.81, B.1.1.3. PNG: ISO/IEC 15948, 5.2. WebP: RFC 9649, 2.4.
 */
export function formatOf(bytes: Buffer): PictureFormat | undefined {
  if (bytes.length > 2 && bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg'
  if (bytes.subarray(0, 8).equals(pngSignature)) return 'png'
  const four = (at: number): string => bytes.toString('latin1', at, at + 4)
  return four(0) === 'RIFF' && four(8) === 'WEBP' ? 'webp' : undefined
}

const pngSignature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

/**
 * Where the picture in a file ends, by the rules of its own format: what comes after is no part of it, and a file that
 * is two things at once (a picture with an archive or a page behind it) has its second part there.
 *
 * @returns the offset behind its last byte; undefined where the file is cut off or not built as its format says
 * @example whereItEnds(bytes, 'png') === bytes.length // it is a picture and nothing else
 */
export function whereItEnds(bytes: Buffer, format: PictureFormat): number | undefined {
  const end = ends[format](bytes)
  return end !== undefined && end <= bytes.length ? end : undefined
}

const ends: Readonly<Record<PictureFormat, (bytes: Buffer) => number | undefined>> = {
  jpeg: endOfJpeg,
  png: endOfPng,
  webp: (bytes) => {
    if (bytes.length < 12) return undefined
    // Chunks are padded to even lengths, and the size counts the padding.
    const size = bytes.readUInt32LE(4)
    return 8 + size + (size % 2)
  },
}

/** Marker by marker (ITU-T T.81, B.1.1.2 to B.1.1.5); of a scan, byte by byte to the marker behind it. */
function endOfJpeg(bytes: Buffer): number | undefined {
  let at = 2
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return undefined
    const marker = bytes[at + 1]!
    if (marker === 0xff) {
      at += 1
    } else if (marker === 0xd9) {
      return at + 2
    } else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      at += 2
    } else {
      if (at + 3 >= bytes.length) return undefined
      at += 2 + bytes.readUInt16BE(at + 2)
      if (marker === 0xda) at = endOfScan(bytes, at)
    }
  }
  return undefined
}

/** In a scan, FF 00 is a byte FF, and FF D0 to FF D7 are restarts: any other marker ends it. */
function endOfScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1]
    if (next !== 0x00 && !(next !== undefined && next >= 0xd0 && next <= 0xd7)) return at
  }
  return bytes.length
}

/** Chunk by chunk to IEND (ISO/IEC 15948, 5.3): length, type, data, and four bytes of check sum. */
function endOfPng(bytes: Buffer): number | undefined {
  let at = pngSignature.length
  while (at + 12 <= bytes.length) {
    const isLast = bytes.toString('latin1', at + 4, at + 8) === 'IEND'
    at += 12 + bytes.readUInt32BE(at)
    if (isLast) return at
  }
  return undefined
}
