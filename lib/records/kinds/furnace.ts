import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, metres, note, recordId } from '../fields'
import { withholdable } from '../withholdable'
import { fuels } from './equipmentRange'

/** One furnace at one site. A furnace that replaces another starts a history of its own. */
export const furnaceBody = z.strictObject({
  siteLabel: line('The site label', 80),
  branch: line('The branch', 60).optional(),
  rangeId: recordId.optional(),
  /** Every character as the data plate prints it. */
  model: line('The model number', 60),
  revision: line('The revision', 40).optional(),
  serial: line('The serial number', 60).optional(),
  elevationMetres: metres.optional(),
  fuel: z.enum(fuels),
  ventLengthMetres: z.number().min(0).max(200, 'A vent of more than 200 m is a slip.').optional(),
  ventMaterial: line('The vent material', 60).optional(),
  replaces: recordId.optional(),
  note: note.optional(),
})

export type FurnaceBody = z.infer<typeof furnaceBody>

export const furnace = defineKind<FurnaceBody>({
  kind: 'furnace',
  version: 1,
  versions: { 1: furnaceBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.rangeId, body.replaces].filter((id) => id !== undefined),
  mayWithhold: withholdable.furnace,
})
