// Reads barcodes and QR codes in a thread of its own, so that the page stays quick, and under a policy of its own: it
// alone may compile WebAssembly (lib/server/http/securityHeaders). Gets { id, picture }, an ImageData; answers
// { id, codes } with text and format, or { id, trouble }.

/* global ZXingWASM, importScripts */

importScripts('zxing.js')

// Beside this file and nowhere else: without this the library would ask a host of its own choosing.
ZXingWASM.prepareZXingModule({
  overrides: { locateFile: (name) => new URL(name, self.location.href).href },
})

/**
 * Formats that carry a check of their own and are met on parts and plates. Those without one (Codabar, Interleaved 2
 * of 5) are read out of plain stripes, and a number that nobody printed is worse than none.
 */
const formats = [
  'QRCode',
  'DataMatrix',
  'Code128',
  'Code39',
  'Code93',
  'EAN13',
  'EAN8',
  'UPCA',
  'UPCE',
  'PDF417',
]

self.addEventListener('message', async ({ data: { id, picture } }) => {
  try {
    const results = await ZXingWASM.readBarcodes(picture, {
      formats,
      maxNumberOfSymbols: 8,
      textMode: 'Plain',
    })
    const codes = results
      .filter(({ isValid, text }) => isValid && text !== '')
      .map(({ text, format }) => ({ text, format }))
    self.postMessage({ id, codes })
  } catch (cause) {
    self.postMessage({ id, trouble: String(cause) })
  }
})
