import { type Catalogue, type Check, type Finding, notChecked, type Observations } from './catalogue'
import { mostOutcomes } from './checkCatalogue'
import { expectedBits } from './entropy'
import { type LikelihoodTable, learnedLikelihoods } from './learnedLikelihoods'
import type { RankedCause } from './rankCauses'

/** One thing that a check may show, and what would then lead. */
export type Outcome = {
  finding: string
  value: string
  /** Chance of this value as things stand. */
  chance: number
  /** The most probable cause after it, with its probability before and after. */
  cause: string
  before: number
  after: number
}

export type PlannedCheck = {
  check: string
  danger: boolean
  by: Check['by']
  minutes: number
  expectedBits: number
  expectedBitsPerMinute: number
  /** What each finding that the check settles may show. */
  why: Outcome[]
}

const order = ['look', 'tool', 'taking apart'] as const satisfies readonly Check['by'][]

/**
 * Puts what is left to look at in order: danger checks first, in the catalogue's own order, because safety does not
 * wait for what tells most; then looks before tools, tools before taking apart, and within each the most expected
 * information per minute first (Shannon bits over the ranked causes), ties in the order of ids. A check is left out once all it reveals has been observed; one that tells nothing here stays, last.
 *
 * The findings that one check reveals are taken as independent under each cause, as the ranking takes them.
 *
 * @param asked.costs minutes of each check, above 0, by check id
 * @param asked.likelihoods what past cases have taught (learnedLikelihoods); the trade's own figures if left out
 * @throws RangeError when a check that is left has no cost, or a cause is ranked that the likelihoods don't know
 */
export function suggestChecks(asked: {
  ranked: readonly Pick<RankedCause, 'cause' | 'probability'>[]
  catalogue: Catalogue
  observed: Observations
  costs: Readonly<Record<string, number>>
  likelihoods?: LikelihoodTable
}): PlannedCheck[] {
  const { ranked, catalogue, observed, costs } = asked
  const table = asked.likelihoods ?? learnedLikelihoods({ catalogue, cases: [], observed: {} })
  const chanceOf = (cause: string, finding: string, value: string): number => {
    const chance = table[cause]?.[finding]?.[value]
    if (chance === undefined)
      throw new RangeError(`No chance of ${finding} '${value}' is known under ${cause}`)
    return chance
  }
  const isOpen = ({ id }: Finding) => (observed[id] ?? notChecked) === notChecked
  const probabilities = ranked.map((one) => one.probability)

  const planned = (catalogue.checks ?? []).flatMap((check): PlannedCheck[] => {
    const open = catalogue.findings.filter((finding) => check.reveals.includes(finding.id) && isOpen(finding))
    if (open.length === 0) return []
    const minutes = costs[check.id]
    if (minutes === undefined || !(minutes > 0 && minutes < Infinity)) {
      throw new RangeError(`Check ${check.id} needs a cost in minutes above 0`)
    }
    const telling = open.filter((finding) => finding.carries !== 'context only')
    const chances = telling.map(({ id, values }) =>
      values.map((value) => ranked.map(({ cause }) => chanceOf(cause, id, value))),
    )
    const bits = expectedBits(probabilities, jointOutcomes(check, chances, ranked.length))
    return [
      {
        check: check.id,
        danger: check.danger ?? false,
        by: check.by,
        minutes,
        expectedBits: bits,
        expectedBitsPerMinute: bits / minutes,
        why: telling.flatMap(({ id, values }, place) =>
          values.map((value, at) => ({ finding: id, value, ...whatLeads(ranked, chances[place]![at]!) })),
        ),
      },
    ]
  })
  const places = new Map((catalogue.checks ?? []).map(({ id }, place) => [id, place]))
  return planned.sort(
    (a, b) =>
      Number(b.danger) - Number(a.danger) ||
      (a.danger ? places.get(a.check)! - places.get(b.check)! : 0) ||
      order.indexOf(a.by) - order.indexOf(b.by) ||
      b.expectedBitsPerMinute - a.expectedBitsPerMinute ||
      (a.check < b.check ? -1 : 1),
  )
}

/** Every combination of the findings' values, each as its chance under every cause. */
function jointOutcomes(check: Check, chances: readonly (readonly number[][])[], causes: number): number[][] {
  let joint: number[][] = [new Array<number>(causes).fill(1)]
  for (const values of chances) {
    joint = joint.flatMap((sofar) => values.map((row) => row.map((chance, cause) => chance * sofar[cause]!)))
    if (joint.length > mostOutcomes) {
      throw new RangeError(
        `Check ${check.id} can end in more than ${mostOutcomes} ways: make it several checks`,
      )
    }
  }
  return joint
}

function whatLeads(
  ranked: readonly Pick<RankedCause, 'cause' | 'probability'>[],
  chances: readonly number[],
) {
  const together = ranked.map((one, place) => one.probability * chances[place]!)
  const chance = together.reduce((sum, one) => sum + one, 0)
  const leader = together.indexOf(Math.max(...together))
  const { cause, probability } = ranked[leader]!
  return { chance, cause, before: probability, after: chance > 0 ? together[leader]! / chance : probability }
}
