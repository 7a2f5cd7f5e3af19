/**
 * What stops the work, and what to do then. Two groups, because the first leaves no time for a furnace.
 * No number of parts per million stands here: none of them is a permission to run.
 * Common practice in the order of the steps; the employer's protocol and local rules come first.
 */
export type DangerGroup = { key: string; title: string; signs: readonly string[]; steps: readonly string[] }

export const leaveNow: DangerGroup = {
  key: 'leave-now',
  title: 'Get everybody out now',
  signs: [
    'You smell gas',
    'A CO alarm is sounding',
    'CO in the room is above your employer’s limit',
    'Anyone feels unwell',
  ],
  steps: [
    'Everybody out, now.',
    'Operate no electrical switch: not a light, not a bell, not the furnace.',
    'Put this phone away.',
    'From outside, call the emergency number and the gas supplier.',
  ],
}

export const shutDown: DangerGroup = {
  key: 'shut-down',
  title: 'Shut down and leave off',
  signs: [
    'Flue gas spilling into the room',
    'CO in the flue is high, or climbing',
    'Flames rolled out, or anything is scorched',
    'Cracked heat exchanger',
    'Vent separated, or blocked and not put right',
    'A jumper or any other bypass',
    'Switch closed at rest, or closing below its rating',
    'A generic switch, or one for another elevation',
    'Water on the controls',
  ],
  steps: [
    'Gas and power off, if that is safe.',
    'Leave it off.',
    'Tag it.',
    'Tell the occupant, and whoever your local rules name.',
  ],
}
