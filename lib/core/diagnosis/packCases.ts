import {
  type CaseTable,
  causePlaces,
  emptyCaseTable,
  writeCause,
  writeContext,
  writeFinding,
} from './caseTable'
import type { Catalogue, PastCase } from './catalogue'
import { checkCatalogue } from './checkCatalogue'
import { readObservations } from './readObservations'

/** Past cases made ready for ranking. Make it once and use it for any number of rankings. */
export type PackedCases = CaseTable & {
  /** The cases themselves, in the same order as in the table: by id. */
  cases: readonly PastCase[]
}

/**
 * Packs past cases into bit sets, in the order of their ids, so that the order they come in never matters.
 * Throws RangeError for a catalogue that cannot be worked on, a case id that comes twice, and a finding or value
 * that the catalogue does not have.
 *
 * @example packCases(catalogue, [{ id: 'c1', findings: { drip: 'seen' }, cause: { main: 'trap', status: 'confirmed' } }])
 */
export function packCases(catalogue: Catalogue, cases: readonly PastCase[]): PackedCases {
  checkCatalogue(catalogue)
  const sorted = cases.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
  const table = emptyCaseTable(
    catalogue,
    sorted.map((one) => one.id),
  )
  const places = causePlaces(catalogue)
  sorted.forEach((one, at) => {
    for (const { finding, value } of readObservations(table, one.findings))
      writeFinding(table, at, finding, value)
    writeCause(table, at, one.cause, places)
    if (one.context) writeContext(table, at, one.context)
  })
  return { ...table, cases: sorted }
}

/**
 * The cases as a ranking needs them: packs a plain list, and makes sure that a packed one speaks the catalogue's
 * language. Throws RangeError when it was packed for a catalogue with other causes, findings, values or context.
 */
export function packedFor(catalogue: Catalogue, cases: PackedCases | readonly PastCase[]): PackedCases {
  if (!('words' in cases)) return packCases(catalogue, cases)
  if (cases.catalogue !== catalogue) {
    checkCatalogue(catalogue)
    if (language(cases.catalogue) !== language(catalogue)) {
      throw new RangeError('These cases were packed for another catalogue')
    }
  }
  return cases
}

function language({ causes, findings, context = [] }: Catalogue): string {
  return JSON.stringify([
    causes.map((cause) => cause.id),
    findings.map((finding) => [finding.id, finding.values, finding.carries ?? 'evidence']),
    context.map((field) => field.id),
  ])
}
