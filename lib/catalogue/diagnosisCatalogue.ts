import type { Catalogue, ContextField } from '@/lib/core/diagnosis'
import { causes } from './causes'
import { checks } from './checks'
import { findings } from './findings'

/**
 * How much farther apart two cases are that happened in other circumstances, in disagreeing findings. Common
 * practice, no published source.
 */
const context: readonly ContextField[] = [
  { id: 'furnace', weight: 2 },
  { id: 'model range', weight: 1 },
  { id: 'fuel', weight: 0.5 },
  { id: 'venting', weight: 1 },
]

/**
 * The order in which the causes are looked for when nobody thinks: that in which the order of the work comes to
 * their confirming tests, the more frequent first where one check serves several.
 */
const checklist: readonly string[] = causes
  .map(({ id, prior, confirm }) => ({
    id,
    prior,
    place: checks.findIndex((check) => check.id === confirm.checkId),
  }))
  .sort((a, b) => a.place - b.place || b.prior - a.prior || (a.id < b.id ? -1 : 1))
  .map(({ id }) => id)

/** Everything the diagnosis works on, in the core's own shape. */
export const diagnosisCatalogue: Catalogue = { causes, findings, checks, context, checklist }
