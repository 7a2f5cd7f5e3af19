/**
 * The body fields that a manager may withhold, kind by kind: only those that can carry somebody's personal data.
 * A number, its source and its date can never be withheld. `picture` is no field of a photo's body but the picture
 * itself, which lies beside the log: its hash and its record stay.
 */
export const withholdable = {
  furnace: ['siteLabel', 'note'],
  report: ['saidBy', 'note'],
  'rating request': ['note'],
  'found fitted': ['fittedBy', 'note'],
  repair: ['note'],
  withdrawal: ['reason'],
  case: ['complaint', 'note'],
  visit: ['note'],
  finding: ['note'],
  reading: ['note'],
  baseline: ['note'],
  'combustion test': ['note'],
  ending: ['declinedBecause', 'note'],
  'shut-down notice': ['told', 'authorityWho', 'heatAndFrost', 'note'],
  lifting: ['because'],
  'danger answer': ['note'],
  'fitted part': ['note'],
  'switch check': ['note'],
  'asks too': ['note'],
  organisation: ['note'],
  'call attempt': ['person', 'note'],
  'warranty answer': ['answeredBy', 'reasonGiven', 'note'],
  photo: ['picture', 'caption', 'note'],
} as const satisfies Readonly<Record<string, readonly string[]>>

/** What a withholding calls the picture of a photo. */
export const thePicture = 'picture'

export const withholdableFields = (kind: string): readonly string[] =>
  (withholdable as Readonly<Record<string, readonly string[]>>)[kind] ?? []
