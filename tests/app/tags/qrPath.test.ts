import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { qrPath } from '@/app/tags/qrPath'
import { tagLink } from '@/lib/core/tag'

/** The squares of a path as the pixels of a picture, `scale` to a module. */
function drawn({ side, path }: ReturnType<typeof qrPath>, scale: number): ImageData {
  const size = side * scale
  const data = new Uint8ClampedArray(size * size * 4).fill(255)
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let row = 0; row < scale; row++)
      for (let column = 0; column < scale; column++) {
        const at = ((Number(y) * scale + row) * size + Number(x) * scale + column) * 4
        data.fill(0, at, at + 3)
      }
  }
  return { width: size, height: size, data, colorSpace: 'srgb' } as ImageData
}

test('qrPath(text) draws a code that another library reads back, letter for letter', async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  prepareZXingModule({ overrides: { wasmBinary: wasm.buffer as ArrayBuffer } })
  for (const origin of ['https://a.example', 'https://inchwater.a-long-name-of-a-team.example:3000']) {
    const text = tagLink(origin, '0123456789A2')
    const [found] = await readBarcodes(drawn(qrPath(text), 4))
    expect(found).toMatchObject({ text, format: 'QRCode', isValid: true, ecLevel: 'M' })
  }
})

test('qrPath(text) leaves the quiet zone of four modules on every side', () => {
  const { side, path } = qrPath('https://team.example/t?c=0123456789A2')
  const places = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)])
  expect(Math.min(...places)).toBe(4)
  expect(Math.max(...places)).toBe(side - 5)
})
