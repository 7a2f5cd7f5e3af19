import { sources } from '@/lib/catalogue/sources'
import { type SourceKind, sourceKinds } from '@/lib/core/vocabulary'
import type { ReportBody } from '../kinds/report'
import type { OldRow } from './readRow'

/** What a row rests on. Without a proof that somebody else can look up it is a lead, whatever it says. */
export type Backing = Pick<ReportBody, 'source' | 'proof' | 'saidOn' | 'saidBy'> & {
  /** What the list says and the report can't: a line for its note. */
  remark?: string
}

/**
 * How lists name sources, beside our own words for them. A source that is trusted wrongly makes a number look verified,
 * so the maker's support is a whole cell that says nothing else, and nothing but our own word makes literature current.
 */
const sourceWords: readonly (readonly [RegExp, SourceKind])[] = [
  [/distributor|\bcounter\b(?!-| ?(?:check|sign))|supplier|wholesal/, 'distributor'],
  [
    /^(?:factory|maker|manufacturer)(?:['’]?s)? (?:tech(?:nical)? )?(?:support|line|help)(?: ?line| desk)?$/,
    'factory support',
  ],
  [/literature|manual|bulletin|\b(?:data)?sheets?\b|instructions|document/, 'older literature'],
  [/parts? ?list|cross.?ref|catalog/, 'parts listing'],
  // A list holds no proof of these. They are named here so that “label; see document” names two.
  [/label|\bplate/, 'factory switch label'],
  [/memory|remember|recall|hand-?writ|\b(?:hand|own|forum|notes?|spread)\b/, 'remembered'],
]

/** Words by which a cell says that it was not so, or is no more: nobody can tell which of its words they are about. */
const denial = /\b(?:not?|non|never|missing|without|lost|unknown|former(?:ly)?|used to)\b|n['’]t\b/

const provenBy = {
  call: ['factory support', 'distributor'],
  document: ['current literature', 'older literature', 'parts listing'],
} as const satisfies Record<string, readonly SourceKind[]>

/**
 * What a row rests on: its source, where the row has what lets somebody look it up (a document and its page, or a call
 * and its reference) and the day on which it was said; else the old list itself, as a lead. A list can’t hold a photo,
 * so a label or data plate is a lead too.
 *
 * @param day the day on which the source said it, ISO 8601; undefined where the row does not say
 */
export function backingOf({ cells }: OldRow, day: string | undefined): Backing {
  const source = sourceIn(cells.source)
  const saidOn = day === undefined ? {} : { saidOn: day }
  const saidBy = cells.saidBy === undefined ? {} : { saidBy: cells.saidBy }
  const proof = source === undefined ? undefined : proofOf(source, cells)
  if (source !== undefined && proof !== undefined && day !== undefined)
    return { source, proof, ...saidOn, ...saidBy }
  const remarks = [
    cells.source === undefined ? undefined : `The list names as its source: ${cells.source}.`,
    cells.document === undefined
      ? undefined
      : `Document: ${[cells.document, cells.page, cells.edition].filter(Boolean).join(', ')}.`,
    cells.organisation === undefined
      ? undefined
      : `Rung: ${[cells.organisation, cells.reference].filter(Boolean).join(', ')}.`,
    proof !== undefined && day === undefined ? 'It does not say on which day, so it is a lead.' : undefined,
  ].filter((remark) => remark !== undefined)
  return {
    source: 'imported',
    ...saidOn,
    ...saidBy,
    ...(remarks.length === 0 ? {} : { remark: remarks.join(' ') }),
  }
}

/**
 * The source that a cell names: none where it names two, since nobody can tell which of them the number is from, and
 * none where it says “not”, “no”, “missing” or the like.
 */
function sourceIn(text: string | undefined): SourceKind | undefined {
  if (text === undefined) return undefined
  const plain = text.toLowerCase().trim()
  const own = sourceKinds.find((kind) => kind === plain || sources[kind].words.toLowerCase() === plain)
  if (own !== undefined) return own
  if (denial.test(plain)) return undefined
  const named = sourceWords.filter(([pattern]) => pattern.test(plain))
  return named.length === 1 ? named[0]![1] : undefined
}

function proofOf(source: SourceKind, cells: OldRow['cells']): ReportBody['proof'] | undefined {
  const has = (kinds: readonly SourceKind[]) => kinds.includes(source)
  const { document, page, edition, organisation, reference } = cells
  if (has(provenBy.document) && document !== undefined && page !== undefined)
    return { kind: 'document', name: document, page, ...(edition === undefined ? {} : { edition }) }
  if (has(provenBy.call) && organisation !== undefined && reference !== undefined)
    return { kind: 'call reference', organisation, reference }
  return undefined
}
