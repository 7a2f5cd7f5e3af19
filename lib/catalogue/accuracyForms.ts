/** The forms in which a manometer's sheet states its accuracy. Common practice, no published source. */
export type AccuracyForm = {
  key: 'reading and counts' | 'span' | 'reading or span' | 'resolution only'
  words: string
  example: string
  fields: readonly ('percentOfReading' | 'counts' | 'percentOfSpan')[]
  combine: 'plus' | 'greater'
}

export const accuracyForms: readonly AccuracyForm[] = [
  {
    key: 'reading and counts',
    words: 'Per cent of reading plus counts',
    example: '± 1 % of reading + 2 digits',
    fields: ['percentOfReading', 'counts'],
    combine: 'plus',
  },
  {
    key: 'span',
    words: 'Per cent of full scale',
    example: '± 0.5 % of full scale',
    fields: ['percentOfSpan'],
    combine: 'plus',
  },
  {
    key: 'reading or span',
    words: 'Per cent of reading or of full scale, whichever is greater',
    example: '± 1 % of reading or ± 0.5 % of full scale, whichever is greater',
    fields: ['percentOfReading', 'percentOfSpan'],
    combine: 'greater',
  },
  {
    key: 'resolution only',
    words: 'Only the resolution is known',
    example: 'U-tube, marks every 0.1 in.',
    fields: [],
    combine: 'plus',
  },
]
