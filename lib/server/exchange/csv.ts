import Papa from 'papaparse'

/** What a cell may hold. A number stays one, so that a spreadsheet can reckon with it. */
export type Cell = string | number | boolean | undefined

/**
 * Texts that a spreadsheet would run as a formula: those that begin with one of = + - @, also full-width or behind
 * blanks and line ends. A plain number such as -0.65 is none, and stays as it is.
 */
const formula = /^\s*(?![-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$)[=+\-@＝＋－＠]/

/**
 * Rows as CSV by RFC 4180: comma, CR LF, quotes where they are needed, doubled inside. A text that a spreadsheet would
 * run gets an apostrophe in front.
 *
 * @example csvOf([['-0.65 in. w.c.', -0.65]])   // "'-0.65 in. w.c.,-0.65\r\n"
 */
export const csvOf = (rows: readonly (readonly Cell[])[]): string =>
  rows.length === 0
    ? ''
    : `${Papa.unparse(rows as Cell[][], { newline: '\r\n', escapeFormulae: formula })}\r\n`
