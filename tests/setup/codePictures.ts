import { readFileSync, writeFileSync } from 'node:fs'
import { create } from 'qrcode'
import { prepareZXingModule, writeBarcode } from 'zxing-wasm/writer'

/** A picture in greys, 0 black to 255 white, row by row. */
type Greys = { width: number; height: number; data: Uint8Array }

/** A QR code, drawn large in the middle of a bright picture. */
function qrPicture(text: string, width: number, height: number): Greys {
  const { size, data: modules } = create(text, { errorCorrectionLevel: 'M' }).modules
  const scale = Math.floor((Math.min(width, height) * 0.8) / size)
  const [left, top] = [Math.floor((width - size * scale) / 2), Math.floor((height - size * scale) / 2)]
  const data = new Uint8Array(width * height).fill(235)
  for (let y = 0; y < size * scale; y++)
    for (let x = 0; x < size * scale; x++)
      if (modules[Math.floor(y / scale) * size + Math.floor(x / scale)])
        data[(top + y) * width + left + x] = 20
  return { width, height, data }
}

/**
 * Writes a film of a QR code for Chromium’s fake camera (--use-file-for-fake-video-capture): one picture, shown over
 * and over. YUV4MPEG2 with half-size colour planes, as mjpegtools’ yuv4mpeg(5) describes it.
 */
export function writeFilm(file: string, text: string): void {
  const { width, height, data } = qrPicture(text, 640, 480)
  const colour = Buffer.alloc((width * height) / 2, 128)
  writeFileSync(
    file,
    Buffer.concat([
      Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\nFRAME\n`),
      Buffer.from(data),
      colour,
    ]),
  )
}

/** A still picture of a Code 128 barcode, as PNG. */
export async function code128Picture(text: string): Promise<Buffer> {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/writer/zxing_writer.wasm')
  prepareZXingModule({ overrides: { wasmBinary: wasm.buffer as ArrayBuffer } })
  const { image, error } = await writeBarcode(text, { format: 'Code128', scale: 3 })
  if (image === null) throw new Error(error)
  return Buffer.from(await image.arrayBuffer())
}
