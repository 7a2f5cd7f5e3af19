/** The state the furnace has to be in while something is done to it. 'left as found': nothing is switched or reset. */
export const workStates = ['left as found', 'power off', 'gas off, inducer only', 'running'] as const
export type WorkState = (typeof workStates)[number]
