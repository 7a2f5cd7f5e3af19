/**
 * The body fields that a manager may withhold, kind by kind: only those that can carry somebody's personal data.
 * A number, its source and its date can never be withheld.
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
} as const satisfies Readonly<Record<string, readonly string[]>>

export const withholdableFields = (kind: string): readonly string[] =>
  (withholdable as Readonly<Record<string, readonly string[]>>)[kind] ?? []
