import type { Between, Sense, Stage, Tap } from '@/lib/core/vocabulary'

/**
 * What each answer about a switch position means, in a line for somebody who meets it for the first time. Common
 * practice, no published source.
 */
export const stageLines: Readonly<Record<Stage, string>> = {
  'single stage': 'The furnace fires at one rate, and this switch proves it.',
  'low fire': 'Proves the start and the low rate.',
  'middle fire': 'Proves a rate between low and high, on some modulating furnaces.',
  'high fire': 'Proves the high rate. On a suction pair it is usually the larger number.',
  'not stated': 'It watches something else, a drain or a vent, or no source says.',
}

export const betweenLines: Readonly<Record<Between, string>> = {
  'port and room': 'One hose; the other side of the switch is open to the room.',
  'port and cabinet': 'One hose; the other side is open to the furnace cabinet. Read with the door on.',
  'two ports': 'Two hoses; the number is the difference between them. Read across both.',
  'not stated': 'No source says. It stays open until one does.',
}

export const tapLines: Readonly<Record<Tap, string>> = {
  'inducer inlet': 'On the suction side of the inducer.',
  'collector box': 'Where the condensate gathers. Water over the port takes the reading away.',
  'burner box': 'The closed box around the burners.',
  'vent side': 'On the outlet side of the inducer.',
  'not stated': 'Nobody has followed the hose yet.',
}

export const senseLines: Readonly<Record<Sense, string>> = {
  suction: 'Below the air around it. Labels often print it with a minus sign, and often forget the sign.',
  pressure: 'Above the air around it: on the vent side of the inducer, or gas.',
  'not stated': 'No source says.',
}
