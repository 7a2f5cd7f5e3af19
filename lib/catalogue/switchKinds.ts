import type { Between, Sense, Stage, SwitchKind, Tap } from '@/lib/core/vocabulary'

export type SwitchKindEntry = {
  words: string
  hint: string
  /** What a newcomer gets wrong with it. Common practice, no published source. */
  careful: string
  /** How its pressure is measured, where the rating does not say otherwise. */
  usualBetween: Between
  usualSense: Sense
  /** Whether an air-pressure reading can be held against its number. */
  comparable: boolean
}

/** The kinds of switch in a proving circuit. Common practice, no published source. */
export const switchKindEntries: Readonly<Record<SwitchKind, SwitchKindEntry>> = {
  'one-port': {
    words: 'One port',
    hint: 'Suction at one port against the air of the room or the cabinet.',
    careful: 'The side that is open to the air must stay open: no tape, no paint.',
    usualBetween: 'port and room',
    usualSense: 'suction',
    comparable: true,
  },
  'two-port': {
    words: 'Two ports',
    hint: 'The difference between two hoses.',
    careful: 'Measure across both ports. One port against the room says nothing about its number.',
    usualBetween: 'two ports',
    usualSense: 'suction',
    comparable: true,
  },
  'opens on rise': {
    words: 'Opens on rise',
    hint: 'Closed at rest; pressure in the vent opens it.',
    careful: 'Both tests are turned round: too much pressure is what opens it.',
    usualBetween: 'port and room',
    usualSense: 'pressure',
    comparable: true,
  },
  'gas pressure': {
    words: 'Gas pressure',
    hint: 'In the same string, looks the same, but it watches the gas and not the air.',
    careful: 'It is no air switch. Its number is never compared with a draft reading.',
    usualBetween: 'port and room',
    usualSense: 'pressure',
    comparable: false,
  },
  sensor: {
    words: 'Electronic sensor',
    hint: 'It sends a value to the control. It has no make point of its own.',
    careful: 'Its rating is a table of targets in the maker’s literature.',
    usualBetween: 'not stated',
    usualSense: 'not stated',
    comparable: false,
  },
}

export const betweenWords: Readonly<Record<Between, string>> = {
  'port and room': 'between the port and the room',
  'port and cabinet': 'between the port and the cabinet, door on',
  'two ports': 'across both ports',
  'not stated': 'points not stated',
}

export const tapWords: Readonly<Record<Tap, string>> = {
  'inducer inlet': 'inducer inlet',
  'collector box': 'collector box',
  'burner box': 'burner box',
  'vent side': 'vent side of the inducer',
  'not stated': 'tap not stated',
}

export const stageWords: Readonly<Record<Stage, string>> = {
  'single stage': 'single stage',
  'low fire': 'low fire',
  'middle fire': 'middle fire',
  'high fire': 'high fire',
  'not stated': 'stage not stated',
}

export const senseWords: Readonly<Record<Sense, string>> = {
  suction: 'suction',
  pressure: 'positive pressure',
  'not stated': 'suction or pressure not stated',
}
