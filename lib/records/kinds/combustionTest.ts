import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotAfterEnding, whyNotOfCase } from '../ofCase'
import { withholdable } from '../withholdable'

const ppm = z
  .number('CO must be a number of ppm.')
  .min(0, 'CO is never negative. Zero the meter outdoors.')
  .max(100_000, 'More than 100,000 ppm is a slip. Look at the meter again.')

const minutes = z.number().min(0, 'Minutes are zero or more.').max(1440, 'More than a day is a slip.')

/** CO in the room and in the flue, with the limits that they were held against and whose limits those are. */
export const combustionTestBody = z
  .strictObject({
    furnaceId: recordId,
    caseId: recordId,
    visitId: recordId,
    when: z.enum(['as found', 'after repair']),
    roomCoPpm: ppm.optional(),
    /** The limit that the employer has set. */
    roomCoLimitPpm: ppm.optional(),
    /** In the order of measuring, as the meter shows it. */
    flueCoPpm: z.array(ppm).max(20),
    /** Oxygen in the flue at the last of them, in per cent: makes the figure air-free. Left out if the meter shows air-free. */
    oxygenPercent: z
      .number()
      .min(0)
      .max(20, 'With more than 20 % oxygen the probe is in room air. Look where it sits.')
      .optional(),
    /** CO air-free, from the manual of this unit. */
    flueCoLimitPpm: ppm.optional(),
    flueCoLimitFrom: line('Where the limit is printed', 120).optional(),
    minutesRunning: minutes.optional(),
    minutesAsked: minutes.optional(),
    meter: line('The CO meter', 80).optional(),
    note: note.optional(),
  })
  .refine((body) => body.roomCoPpm !== undefined || body.flueCoPpm.length > 0, {
    path: ['roomCoPpm'],
    message: 'Type what the meter shows in the room or in the flue.',
  })
  .refine((body) => body.roomCoPpm === undefined || body.roomCoLimitPpm !== undefined, {
    path: ['roomCoLimitPpm'],
    message:
      'Type the limit that your employer has set for CO in the room. If none is set, type 0: then any CO counts.',
  })
  .refine((body) => body.flueCoLimitPpm === undefined || body.flueCoLimitFrom !== undefined, {
    path: ['flueCoLimitFrom'],
    message: 'Say where the limit is printed: this unit’s manual and page.',
  })

export type CombustionTestBody = z.infer<typeof combustionTestBody>

export const combustionTest = defineKind<CombustionTestBody>({
  kind: 'combustion test',
  version: 1,
  versions: { 1: combustionTestBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.caseId, body.visitId],
  refusedBy: (body, lookup, said) =>
    whyNotOfCase(body, lookup) ?? whyNotAfterEnding(body.visitId, lookup, said.saidAt),
  mayWithhold: withholdable['combustion test'],
})
