import { type Catalogue, notChecked, type Observations } from './catalogue'

/** One observed finding, by its places in the catalogue. */
export type Observed = { finding: number; value: number }

/**
 * Makes a reader of observations for one catalogue. The reader returns those that carry evidence, in the
 * catalogue's order whatever order they came in, and throws RangeError at a finding or a value that is not there.
 */
export function observationReader(catalogue: Catalogue): (observations: Observations) => Observed[] {
  const places = new Map(catalogue.findings.map((finding, place) => [finding.id, place]))
  return (observations) => {
    const observed: Observed[] = []
    for (const id of Object.keys(observations)) {
      const place = places.get(id)
      if (place === undefined) throw new RangeError(`The catalogue has no finding ${id}`)
      const value = observations[id]!
      if (value === notChecked) continue
      const finding = catalogue.findings[place]!
      const valuePlace = finding.values.indexOf(value)
      if (valuePlace < 0) throw new RangeError(`'${value}' is no value of finding ${id}`)
      if (finding.carries !== 'context only') observed.push({ finding: place, value: valuePlace })
    }
    return observed.sort((a, b) => a.finding - b.finding)
  }
}

/** Reads one set of observations: see observationReader. */
export function readObservations(catalogue: Catalogue, observations: Observations): Observed[] {
  return observationReader(catalogue)(observations)
}
