import type { Catalogue } from './catalogue'
import type { Posterior } from './posterior'
import type { Observed } from './readObservations'

/** What one finding does to one cause. `bits` above 0 speaks for it, below 0 against it. */
export type Evidence = { finding: string; value: string; bits: number }

/** Below this a finding tells nothing: what is left is rounding. */
const nothing = 1e-9

/**
 * The weight of each finding's evidence for one cause, in bits, the other findings given (I. J. Good, Probability and
 * the Weighing of Evidence, 1950, from memory): log2 of how much more probable it is under this cause than under the
 * others, the others mixed as the remaining findings leave them. It is by how much the finding moves the odds.
 */
export function weighEvidence(
  catalogue: Catalogue,
  observed: readonly Observed[],
  posterior: Posterior,
  cause: number,
): { forIt: Evidence[]; againstIt: Evidence[] } {
  const evidence = observed.map(({ finding, value }, f) => {
    const { id, values } = catalogue.findings[finding]!
    return { finding: id, value: values[value]!, bits: bitsFor(posterior, observed.length, cause, f) }
  })
  const told = evidence.filter((one) => Math.abs(one.bits) > nothing)
  return {
    forIt: told.filter((one) => one.bits > 0).sort((a, b) => b.bits - a.bits),
    againstIt: told.filter((one) => one.bits < 0).sort((a, b) => a.bits - b.bits),
  }
}

function bitsFor(
  { probabilities, likelihoods }: Posterior,
  findings: number,
  cause: number,
  f: number,
): number {
  let othersWithout = 0
  let othersWith = 0
  for (let other = 0; other < probabilities.length; other++) {
    if (other === cause) continue
    // Dividing the finding's own factor out of the posterior leaves what the other findings say.
    othersWithout += probabilities[other]! / likelihoods[other * findings + f]!
    othersWith += probabilities[other]!
  }
  if (othersWith === 0) return 0
  return Math.log2(likelihoods[cause * findings + f]!) - Math.log2(othersWith / othersWithout)
}
