import type { ColumnField } from './columns'

/** Where a number is wanted: there a sign begins a number, and whatever else stands behind it makes it a formula. */
const numberFields: readonly ColumnField[] = ['make', 'break', 'rating', 'tolerance']

/**
 * A signed number, “-0.65”, “+.65 in. w.c.”, “-0.65 ±0.05”, “-0.65 +0.05/-0.05”, or a tolerance’s “+/- 0.05”. What
 * reckons with it, “+1+1”, is none.
 */
const plainNumber =
  /^(?:\+\s*\/?\s*[-−]\s*)?[-+]?\s*(?:\d[\d.,]*|[.,]\d+)(?:\s*(?:\+\s*[\d.,]+\s*[/|]\s*-\s*[\d.,]+|-\s*[\d.,]+\s*[/|]\s*\+\s*[\d.,]+|[^\d\s+\-*/^&(=].*)?)?$/

/**
 * Whether a cell is a formula of a spreadsheet, that shows something else than what it holds: it begins with = or @, or
 * with a sign that no plain number follows. A sign alone, and a note that begins with a dash and a blank, is none.
 *
 * @example isFormula('=1+1', 'make') // true
 * @example isFormula('-0.65', 'make') // false
 */
export function isFormula(cell: string, field: ColumnField): boolean {
  if (/^[=@]/.test(cell)) return true
  if (!/^[-+]/.test(cell) || /^[-+/\s]*$/.test(cell)) return false
  return numberFields.includes(field) ? !plainNumber.test(cell) : /^[-+][\p{L}("'$]/u.test(cell)
}
