import type { SourceKind } from '@/lib/core/vocabulary'

/** Remarks of the kind that colleagues leave beside a number, by source. Each is used once. */
export const notes: Readonly<Partial<Record<SourceKind, readonly string[]>>> = {
  'current literature': [
    'Table at the back, third column.',
    'Sheet from their dealer page, printed and in the blue folder.',
    'Print is small: I took the ruler to it.',
    'Checked against the size above, it fits the row.',
    'The page is for the whole family, line by size.',
    'Same number in last year’s issue.',
    'Footnote: only with the vent in the table before.',
    'Copied from the booklet on site; ours is the older one.',
    'Two columns, make and break, plainly headed. For once.',
  ],
  'factory switch label': [
    'Wiped the dust off first.',
    'Half hidden by the bracket, mirror and torch.',
    'Label is yellow but readable.',
    'Read it to the office, they typed along.',
    'Part number agrees with the list.',
    'Hose is new, switch is the first one.',
    'Upside down on the bracket. Took me a while.',
  ],
  distributor: [
    'Friendly, and in a hurry.',
    'Had it in a minute.',
    'She reads it from the maker’s screen.',
    'They had only this size on the screen.',
    'Put through twice before somebody knew.',
    'He wanted the serial first.',
    'Will mail the page. Has not so far.',
    'No idea about the other elevation.',
  ],
  'factory support': [
    'Eleven minutes. Good line.',
    'Wanted model, serial, elevation, in that order.',
    'Says the number has not moved since the family came out.',
  ],
  'parts listing': [
    'One number, no word beside it.',
    'Seller’s page. Could be any of the two.',
    'Cross-reference list, bottom of the page.',
  ],
  remembered: [
    'From memory, three winters ago.',
    'Pencil on the door, initials nobody knows.',
    'Ott says so. Ott also says he is not sure.',
    '“Same as the one next door.”',
  ],
  imported: [
    'Binder, green tab.',
    'Binder. Coffee on half the line.',
    'From the old list; the list has no dates.',
    'Old list, second sheet.',
  ],
  'bench check': ['Three slow pulls, the middle one.', 'Hand pump, new switch out of the bag.'],
}
