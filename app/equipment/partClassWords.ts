import type { PartBody } from '@/lib/records/kinds/part'

type PartClass = PartBody['class']

export const partClassNames: Readonly<Record<PartClass, string>> = {
  factory: 'Factory part',
  'general-purpose': 'General-purpose switch',
  'not known': 'Not known yet',
}

/** How the three are told apart, in a line each. */
export const partClassLines: Readonly<Record<PartClass, string>> = {
  factory:
    'The furnace’s maker names it for this model and serial. A fixed part that serves several models is one too.',
  'general-purpose': 'Its setting can be changed in the field, or no maker names it for the furnace.',
  'not known': 'Nobody has said yet. It cannot be fitted as a repair until somebody does.',
}

/** What it means for a part to be general-purpose, wherever one is recorded or shown. */
export const generalPurposeMeaning =
  'A general-purpose switch is never a repair, and the number on its label is no furnace’s rating.'

export const generalPurposeIsRightToRecord =
  'Recording it is right: whoever meets the next one then knows what it is.'
