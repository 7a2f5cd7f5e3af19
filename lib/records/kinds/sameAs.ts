import '../withoutEval'
import { z } from 'zod'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { line, recordId } from '../fields'
import { isSame } from '../ofCase'

const joinable = ['maker', 'equipment range', 'position', 'part', 'furnace', 'gauge']

/** What belongs to every rating at a position: where two positions differ in it, no rating is the other's. */
const ratingNeeds: Readonly<Record<string, string>> = {
  rangeId: 'the furnace range',
  stage: 'the stage',
  kind: 'the kind of switch',
  between: 'the points between which the pressure acts',
  tap: 'where the hose ends',
  sense: 'suction or pressure',
}

/** Two records name one thing. Everything said of the duplicate is read as said of the one that is kept. */
export const sameAsBody = z
  .strictObject({ kept: recordId, duplicate: recordId, reason: line('The reason', 500) })
  .refine((body) => body.kept !== body.duplicate, {
    path: ['duplicate'],
    message: 'A record is the same as itself already. Choose the other one.',
  })

export type SameAsBody = z.infer<typeof sameAsBody>

export const sameAs = defineKind<SameAsBody>({
  kind: 'same as',
  version: 1,
  versions: { 1: sameAsBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.kept, body.duplicate],
  refusedBy: (body, lookup) => {
    const kept = lookup(body.kept)
    const duplicate = lookup(body.duplicate)
    if (kept?.kind !== duplicate?.kind || !joinable.includes(kept?.kind ?? '')) {
      return {
        rule: 'only like joins like',
        sentence: `Only two ${joinable.slice(0, -1).join('s, ')}s or gauges can be joined, each with its own kind.`,
      }
    }
    if (kept?.kind === 'part' && kept.body.class !== duplicate?.body.class) {
      return {
        rule: 'only like joins like',
        sentence: 'One of these parts is a factory part and the other is not. They cannot be the same part.',
      }
    }
    return kept?.kind === 'position' ? whyApart(kept.body, duplicate?.body ?? {}, lookup) : undefined
  },
  mayWithhold: [],
})

function whyApart(
  kept: Record<string, unknown>,
  duplicate: Record<string, unknown>,
  lookup: Lookup,
): Refusal | undefined {
  const apart = Object.keys(ratingNeeds).filter((key) =>
    key === 'rangeId' ? !isSame(kept[key], String(duplicate[key]), lookup) : kept[key] !== duplicate[key],
  )
  if (apart.length === 0) return undefined
  const named = apart.map((key) =>
    key === 'rangeId' ? ratingNeeds[key] : `${ratingNeeds[key]} (${kept[key]}, ${duplicate[key]})`,
  )
  return {
    rule: 'only like joins like',
    sentence: `These positions differ in ${named.join(', and in ')}. Their ratings are never one and the same.`,
  }
}
