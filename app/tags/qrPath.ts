import { create } from 'qrcode'

/** White modules that must stay around a QR code (ISO/IEC 18004:2015, 6.3.8). */
const quietZone = 4

/**
 * A QR code as one SVG path, a square of side 1 for each dark module, its quiet zone included.
 * Error correction M: up to about 15 % of a scratched tag can be lost (ISO/IEC 18004:2015, table 12).
 * @example qrPath('https://team.example/t?c=0123456789A2').side // 37
 */
export function qrPath(text: string): { side: number; path: string } {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules
  const squares = [...data.entries()]
    .filter(([, dark]) => dark)
    .map(([at]) => `M${(at % size) + quietZone} ${Math.floor(at / size) + quietZone}h1v1h-1z`)
  return { side: size + 2 * quietZone, path: squares.join('') }
}
