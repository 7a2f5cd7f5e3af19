import PDFDocument from 'pdfkit'
import type { LetterParts } from './letterParts'
import { printable, unprintable } from './printable'

const margin = 48
/** Points. The largest at which the letter fits one page is taken; below the least a second page is better. */
const sizes = [10, 9.5, 9, 8.5, 8, 7.5, 7] as const
const regular = 'Helvetica'
const bold = 'Helvetica-Bold'

type Line = { font: string; text: string; scale?: number; above?: number; indent?: number }

/**
 * The letter as a PDF of one page, A4, in the standard fonts that every reader has.
 * @param made when it is made: it is written into the file
 * @param compress false keeps the text readable in the bytes
 */
export async function letterPdf(parts: LetterParts, made: Date, compress = true): Promise<Uint8Array> {
  const document = new PDFDocument({
    size: 'A4',
    margin,
    compress,
    lang: 'en',
    info: { Title: printable(parts.title), Producer: 'Inchwater', CreationDate: made },
  })
  const chunks: Uint8Array[] = []
  const whole = new Promise<Uint8Array>((done, failed) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('end', () => done(Buffer.concat(chunks)))
    document.on('error', failed)
  })
  const room = document.page.height - 2 * margin
  const size = sizes.find((one) => heightOf(document, parts, one) <= room) ?? sizes.at(-1)!
  write(document, parts, size)
  document.end()
  return whole
}

const widths = [0.37, 0.19, 0.19, 0.25] as const
/** Points left free between a row's words and the rule below, and between that and the next row's words. */
const aroundRule = { above: 2, below: 3 }
const widthOf = (document: PDFKit.PDFDocument): number => document.page.width - 2 * margin

/** Everything above the table. */
const head = ({ title, standing, means }: LetterParts): Line[] => [
  { font: bold, text: title, scale: 1.6 },
  { font: regular, text: standing, above: 0.3 },
  { font: regular, text: means, above: 0.3 },
]

/** Everything below it. */
function below(parts: LetterParts): Line[] {
  const { todoTitle, todos, nothingTodo, foot } = parts
  const lines: Line[] = [
    { font: bold, text: todoTitle, scale: 1.2, above: 0.8 },
    ...(todos.length === 0 ? [{ font: regular, text: nothingTodo, above: 0.2 }] : []),
    ...todos.flatMap(({ words, todo, first }): Line[] => [
      { font: bold, text: `${words}. ${todo}`, above: 0.3 },
      ...first.map((text) => ({ font: regular, text, indent: 10 })),
    ]),
    ...foot.map((text) => ({ font: regular, text, above: 0.6 })),
  ]
  const changed = [...head(parts), ...lines].some(
    ({ text }) => printable(text).includes(unprintable) && !text.includes(unprintable),
  )
  const note = `${unprintable} stands for a character that this page cannot print. The screen shows it.`
  return changed ? [...lines, { font: regular, text: note, above: 0.3 }] : lines
}

function heightOf(document: PDFKit.PDFDocument, parts: LetterParts, size: number): number {
  const ofLine = ({ font, text, scale = 1, above = 0, indent = 0 }: Line): number =>
    above * size +
    document
      .font(font)
      .fontSize(size * scale)
      .heightOfString(printable(text), { width: widthOf(document) - indent })
  const lines = [...head(parts), ...below(parts)].reduce((sum, line) => sum + ofLine(line), 0)
  return lines + size + cells(parts).reduce((sum, row) => sum + rowHeight(document, row, size), 0)
}

const cells = ({ columns, rows }: LetterParts): (readonly string[])[] => [
  columns,
  ...rows.map(({ words, month, before, change }) => [words, month, before, change]),
]

function rowHeight(document: PDFKit.PDFDocument, row: readonly string[], size: number): number {
  const heights = row.map((text, column) =>
    document
      .font(bold)
      .fontSize(size)
      .heightOfString(printable(text), { width: widths[column]! * widthOf(document) - 6 }),
  )
  return Math.max(...heights) + aroundRule.above + aroundRule.below
}

function write(document: PDFKit.PDFDocument, parts: LetterParts, size: number): void {
  for (const line of head(parts)) writeLine(document, line, size)
  document.y += size
  for (const [place, row] of cells(parts).entries()) writeRow(document, row, size, place === 0)
  for (const line of below(parts)) writeLine(document, line, size)
}

function writeLine(
  document: PDFKit.PDFDocument,
  { font, text, scale = 1, above = 0, indent = 0 }: Line,
  size: number,
): void {
  document.y += above * size
  document
    .font(font)
    .fontSize(size * scale)
    .text(printable(text), margin + indent, document.y, { width: widthOf(document) - indent })
}

function writeRow(document: PDFKit.PDFDocument, row: readonly string[], size: number, isHead: boolean): void {
  const top = document.y
  const height = rowHeight(document, row, size)
  let left = margin
  for (const [column, text] of row.entries()) {
    const width = widths[column]! * widthOf(document)
    document
      .font(isHead || column === 0 ? bold : regular)
      .fontSize(size)
      .text(printable(text), left, top, { width: width - 6, align: column === 0 ? 'left' : 'right' })
    left += width
  }
  const bottom = top + height
  document
    .moveTo(margin, bottom - aroundRule.below)
    .lineTo(margin + widthOf(document), bottom - aroundRule.below)
    .lineWidth(isHead ? 1 : 0.3)
    .stroke()
  document.y = bottom
}
