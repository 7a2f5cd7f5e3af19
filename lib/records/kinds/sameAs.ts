import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, recordId } from '../fields'

const joinable = ['maker', 'equipment range', 'position', 'part', 'furnace', 'gauge']

const positionWords: Readonly<Record<string, string>> = {
  rangeId: 'their furnace range',
  stage: 'their stage',
  kind: 'the kind of switch',
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
    const apart = Object.keys(positionWords).find((key) => kept?.body[key] !== duplicate?.body[key])
    if (kept?.kind === 'position' && apart !== undefined) {
      return {
        rule: 'only like joins like',
        sentence: `These positions differ in ${positionWords[apart]}. Their ratings are never one and the same.`,
      }
    }
    return undefined
  },
  mayWithhold: [],
})
