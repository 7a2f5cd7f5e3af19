import { type Context, type NamedCause, notChecked, type Observations } from './catalogue'
import { measureDistances } from './neighbourhood'
import type { PackedCases } from './packCases'
import { type Observed, readObservations } from './readObservations'

/** A past case beside the present one. Findings not checked in both appear nowhere. */
export type SimilarCase = {
  id: string
  /** 0 is nearest: see weighNeighbours. */
  distance: number
  agreements: string[]
  disagreements: { finding: string; now: string; before: string }[]
  sameContext: string[]
  otherContext: { field: string; now: string; before: string }[]
  cause?: NamedCause
}

/**
 * The k cases nearest to the present one, nearest first, ties in the order of their ids, whether or not their cause
 * is known. Throws RangeError for a finding or value that the cases' catalogue does not have.
 */
export function similarCases(asked: {
  cases: PackedCases
  observed: Observations
  context?: Context
  k: number
}): SimilarCase[] {
  const { cases, context = {}, k } = asked
  if (!Number.isInteger(k) || k < 0) throw new RangeError('similarCases requires a whole number of cases')
  const { catalogue } = cases
  const observed = readObservations(cases, asked.observed)
  const { classes, distances } = measureDistances(cases, catalogue, observed, context)
  const nearest = nearestKeeper(k)
  for (let at = 0; at < classes.length; at++) nearest.offer(at, distances[classes[at]!]!)
  return nearest.kept.map(({ at, distance }) => describeCase(cases, observed, context, at, distance))
}

/** Keeps the nearest of the cases it is offered, nearest first, ties as they come. */
export function nearestKeeper(howMany: number) {
  const kept: { at: number; distance: number }[] = []
  return {
    kept,
    offer(at: number, distance: number): void {
      if (kept.length === howMany && (howMany === 0 || distance >= kept[howMany - 1]!.distance)) return
      let slot = kept.length
      while (slot > 0 && distance < kept[slot - 1]!.distance) slot--
      kept.splice(slot, 0, { at, distance })
      if (kept.length > howMany) kept.pop()
    },
  }
}

export function describeCase(
  cases: PackedCases,
  observed: readonly Observed[],
  context: Context,
  at: number,
  distance: number,
): SimilarCase {
  const { findings, context: fields = [] } = cases.catalogue
  const past = cases.cases[at]!
  const agreements: string[] = []
  const disagreements: SimilarCase['disagreements'] = []
  for (const { finding, value } of observed) {
    const { id, values } = findings[finding]!
    const before = past.findings[id] ?? notChecked
    const now = values[value]!
    if (before === now) agreements.push(id)
    else if (before !== notChecked) disagreements.push({ finding: id, now, before })
  }
  const sameContext: string[] = []
  const otherContext: SimilarCase['otherContext'] = []
  for (const { id } of fields) {
    const now = context[id]
    const before = past.context?.[id]
    if (now === undefined || before === undefined) continue
    if (now === before) sameContext.push(id)
    else otherContext.push({ field: id, now, before })
  }
  return { id: past.id, distance, agreements, disagreements, sameContext, otherContext, cause: past.cause }
}
