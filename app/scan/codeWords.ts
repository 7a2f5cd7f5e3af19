/** The kinds of code by their names, whichever way a reader writes them. */
const names: Readonly<Record<string, string>> = {
  qrcode: 'QR code',
  datamatrix: 'Data Matrix',
  code128: 'Code 128',
  code39: 'Code 39',
  code93: 'Code 93',
  ean13: 'EAN-13',
  ean8: 'EAN-8',
  upca: 'UPC-A',
  upce: 'UPC-E',
  pdf417: 'PDF417',
  typed: 'typed by hand',
}

export const formatWords = (format: string): string =>
  names[format.toLowerCase().replace(/[^a-z0-9]/g, '')] ?? format

const longestShown = 200

/** A code letter for letter: what has no letter of its own is shown by its sign (Unicode block Control Pictures). */
export function shownText(text: string): string {
  const shown = text
    .slice(0, longestShown)
    .replace(/\p{Cc}/gu, (control) =>
      control < ' ' ? String.fromCharCode(0x2400 + control.charCodeAt(0)) : control,
    )
  return text.length > longestShown ? `${shown} … (${text.length} characters)` : shown
}
