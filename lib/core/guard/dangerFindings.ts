/** Everybody out now. */
export const everybodyOutIds = [
  'smell-of-gas',
  'co-alarm-sounding',
  'room-co-above-limit',
  'anyone-unwell',
] as const

/** Gas and power off if that is safe, and leave off. */
export const leaveOffIds = [
  'spillage',
  'flue-co-high',
  'flue-co-climbing',
  'flame-roll-out',
  'scorching',
  'cracked-heat-exchanger',
  'vent-separated',
  'vent-blocked-uncorrected',
  'jumper-or-bypass',
  'switch-closed-at-rest',
  'switch-closes-below-rating',
  'switch-stays-closed-above-opening-point',
  'general-purpose-switch-fitted',
  'wrong-elevation-switch-fitted',
  'water-on-controls',
] as const

/** Every finding that is a danger, the gravest first. A finding is given by its plain id when it was seen. */
export const dangerFindingIds = [...everybodyOutIds, ...leaveOffIds] as const

export type DangerCode = (typeof dangerFindingIds)[number]

/** What was found and why it is a danger, in a sentence. */
export const dangerSentence: Readonly<Record<DangerCode, string>> = {
  'smell-of-gas': 'There is a smell of gas.',
  'co-alarm-sounding': 'A CO alarm is sounding.',
  'room-co-above-limit':
    'CO in the room is above the limit that your employer has set, or too high whatever that is.',
  'anyone-unwell': 'Somebody is unwell: headache, dizziness, sickness. It may be CO.',
  spillage: 'Combustion products spill into the room.',
  'flue-co-high': 'CO in the flue is too high.',
  'flue-co-climbing': 'CO in the flue is climbing.',
  'flame-roll-out': 'Flame has rolled out, or a roll-out switch has tripped.',
  scorching: 'There is scorching.',
  'cracked-heat-exchanger': 'The heat exchanger is cracked or holed.',
  'vent-separated': 'The vent has come apart: combustion products go into the house.',
  'vent-blocked-uncorrected': 'The vent is blocked and has not been put right.',
  'jumper-or-bypass':
    'The switch is bypassed: jumper, tape, prop, or a hose moved to defeat it. Nothing proves air.',
  'switch-closed-at-rest': 'The switch is closed at rest: it proves nothing.',
  'switch-closes-below-rating':
    'The switch is closed at a reading too low to close it: it proves too little air.',
  'switch-stays-closed-above-opening-point':
    'The switch opens on rise, and stays closed at a pressure that should open it.',
  'general-purpose-switch-fitted':
    'An adjustable or general-purpose switch is fitted: nobody has proven that it shows too little air.',
  'wrong-elevation-switch-fitted': 'The switch is for another elevation: it may prove too little air.',
  'water-on-controls': 'There is water on the controls or in the burners.',
}
