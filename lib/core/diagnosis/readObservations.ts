import type { CaseTable } from './caseTable'
import { notChecked, type Observations } from './catalogue'

/** One observed finding, by its places in the catalogue. */
export type Observed = { finding: number; value: number }

/**
 * The observations that carry evidence, in the catalogue's order whatever order they came in.
 * Throws RangeError at a finding or a value that the table's catalogue does not have.
 */
export function readObservations(table: CaseTable, observations: Observations): Observed[] {
  const observed: Observed[] = []
  for (const id of Object.keys(observations)) {
    const place = table.findingPlaces.get(id)
    if (place === undefined) throw new RangeError(`The catalogue has no finding ${id}`)
    const value = observations[id]!
    if (value === notChecked) continue
    const finding = table.catalogue.findings[place]!
    const valuePlace = finding.values.indexOf(value)
    if (valuePlace < 0) throw new RangeError(`'${value}' is no value of finding ${id}`)
    if (finding.carries !== 'context only') observed.push({ finding: place, value: valuePlace })
  }
  return observed.sort((a, b) => a.finding - b.finding)
}
