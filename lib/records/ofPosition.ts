import type { Lookup, Refusal } from './envelope'

/** Why a record cannot be of the switch position that it names: it is none. One that names no position is well. */
export const whyNoPosition = (positionId: string | undefined, lookup: Lookup): Refusal | undefined =>
  positionId === undefined || lookup(positionId)?.kind === 'position'
    ? undefined
    : {
        rule: 'a switch has its position',
        sentence:
          'The switch position that it names is none. Choose one of the positions of the furnace’s range.',
      }
