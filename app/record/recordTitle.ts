import { readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { sources } from '@/lib/catalogue/sources'
import { groupedTagCode } from '@/lib/core/tag'
import type { SourceKind } from '@/lib/core/vocabulary'
import type { PhotoShows } from '@/lib/records/kinds/photo'
import { showsWords } from '../ui/photo/photoWords'
import { sayDate } from '../ui/words/sayDate'
import { kindName } from './kindNames'

type Body = Readonly<Record<string, unknown>>

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)

/** Things that have a name of their own, and which field it is. */
const named: Readonly<Record<string, readonly string[]>> = {
  maker: ['name'],
  'equipment range': ['name'],
  position: ['name'],
  part: ['partNumber'],
  furnace: ['siteLabel', 'model'],
  gauge: ['name'],
  organisation: ['name'],
  import: ['fileName'],
}

/** What tells one record of a kind from another, in a few words; never a number. */
const told: Readonly<Record<string, (body: Body) => string | undefined>> = {
  report: ({ source }) => sources[source as SourceKind]?.words,
  'rating request': ({ model, positionName, printed }) => text(model) ?? text(positionName) ?? text(printed),
  'found fitted': ({ what }) => text(what),
  repair: ({ done }) => text(done),
  case: ({ complaint }) => text(complaint),
  visit: ({ on }) => (typeof on === 'string' ? sayDate(on) : undefined),
  finding: ({ finding }) => (typeof finding === 'string' ? readableFinding(finding)?.name : undefined),
  reading: ({ phase }) => text(phase),
  ending: ({ how }) => text(how),
  'shut-down notice': ({ on }) => (typeof on === 'string' ? sayDate(on) : undefined),
  'fitted part': ({ printed }) => text(printed),
  'asks too': ({ model, printed }) => text(model) ?? text(printed),
  'call attempt': ({ outcome }) => text(outcome),
  'answer seen': ({ how }) => text(how),
  photo: ({ caption, shows }) => text(caption) ?? showsWords[shows as PhotoShows],
  'warranty answer': ({ outcome }) => text(outcome),
  tag: ({ code }) => (typeof code === 'string' ? groupedTagCode(code) : undefined),
}

const ownName = (kind: string, body: Body): string | undefined =>
  named[kind]?.flatMap((field) => text(body[field]) ?? []).at(0) ?? told[kind]?.(body)

/** What a record is called at the head of a sheet: its kind, with its own name where it has one. */
export function recordTitle(kind: string, body: Body): string {
  const own = ownName(kind, body)
  return own === undefined ? kindName(kind) : `${kindName(kind)}: ${own}`
}

/** What a record is called in a link: its own name alone where it is the name of a thing. */
export const recordName = (kind: string, body: Body): string =>
  named[kind] === undefined ? recordTitle(kind, body) : (ownName(kind, body) ?? kindName(kind))
