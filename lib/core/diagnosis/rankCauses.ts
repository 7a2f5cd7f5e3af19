import { bootstrapIntervals } from './bootstrapIntervals'
import { type Catalogue, type Context, type Observations, type PastCase, unlistedCause } from './catalogue'
import { type Evidence, weighEvidence } from './evidence'
import { measureDistances, type Neighbourhood, weighNeighbours } from './neighbourhood'
import { type PackedCases, packedFor } from './packCases'
import { posteriorOf, tradeView } from './posterior'
import { readObservations } from './readObservations'
import { completeSettings, type RankingSettings } from './settings'
import { describeCase, nearestKeeper, type SimilarCase } from './similarCases'
import { splitByCause, sumByCause } from './sumByCause'
import { tallyNeighbours } from './tallies'

export type RankedCause = {
  /** The cause's id, or `unlistedCause`. */
  cause: string
  danger: boolean
  probability: number
  /** How far the cases at hand could have fallen otherwise: see bootstrapIntervals. */
  interval90: readonly [number, number]
  /** The weight of the past cases behind this cause. 0: the trade's figures alone. */
  weightOfCases: number
  forIt: Evidence[]
  againstIt: Evidence[]
  /** The nearest past cases that had this cause and carry weight, nearest first. */
  similarCases: SimilarCase[]
}

/**
 * Ranks every cause of the catalogue, and one outside it, by its probability given the findings: locally weighted
 * naive Bayes (see weighNeighbours and posteriorOf), from the trade's own figures and the past cases. Most probable
 * first, ties in the order of ids. Probabilities add up to 1. Nothing depends on the order of findings or cases.
 *
 * @param asked.cases packed by packCases (do so when ranking more than once), or a plain list
 * @throws RangeError for a catalogue that cannot be worked on, an unknown finding or value, a setting out of range
 * @example rankCauses({ catalogue, cases: [], observed: { drip: 'seen' } })[0].probability
 */
export function rankCauses(asked: {
  catalogue: Catalogue
  cases: PackedCases | readonly PastCase[]
  observed: Observations
  context?: Context
  settings?: Partial<RankingSettings>
}): RankedCause[] {
  const { catalogue, context = {} } = asked
  const settings = completeSettings(asked.settings)
  const cases = packedFor(catalogue, asked.cases)
  const observed = readObservations(cases, asked.observed)

  const neighbourhood = weighNeighbours(
    cases,
    measureDistances(cases, catalogue, observed, context),
    settings.neighbours,
  )
  const tallies = tallyNeighbours(cases, neighbourhood, observed, settings)
  const trade = tradeView(catalogue, observed)
  const contributions = splitByCause(tallies, catalogue.causes.length, settings.contributingShare)
  const byCause = sumByCause(contributions)
  const posterior = posteriorOf(trade, byCause, settings)
  const intervals = settings.replicates > 0 ? bootstrapIntervals(trade, tallies, contributions, settings) : []
  const similar = nearestByCause(cases, neighbourhood, tallies.members, settings.similarPerCause)
  const listed = catalogue.causes.map(
    (cause, place): RankedCause => ({
      cause: cause.id,
      danger: cause.danger ?? false,
      probability: posterior.probabilities[place]!,
      interval90: intervals[place] ?? pointAt(posterior.probabilities[place]!),
      weightOfCases: byCause[place * tallies.width]!,
      ...weighEvidence(catalogue, observed, posterior, place),
      similarCases: similar[place]!.map(({ at, distance }) =>
        describeCase(cases, observed, context, at, distance),
      ),
    }),
  )
  const outside = catalogue.causes.length
  const unlisted: RankedCause = {
    cause: unlistedCause,
    danger: false,
    probability: posterior.probabilities[outside]!,
    interval90: intervals[outside] ?? pointAt(posterior.probabilities[outside]!),
    weightOfCases: 0,
    ...weighEvidence(catalogue, observed, posterior, outside),
    similarCases: [],
  }
  return (settings.unlistedPrior > 0 ? [...listed, unlisted] : listed).sort(
    (a, b) => b.probability - a.probability || (a.cause < b.cause ? -1 : 1),
  )
}

const pointAt = (probability: number) => [probability, probability] as const

/** The nearest of the weighed cases that each cause had a part in. */
function nearestByCause(cases: PackedCases, near: Neighbourhood, members: Int32Array, howMany: number) {
  const keepers = cases.catalogue.causes.map(() => nearestKeeper(howMany))
  for (let member = 0; member < members.length; member++) {
    const at = members[member]!
    const distance = near.distances[near.classes[at]!]!
    keepers[cases.main[at]!]!.offer(at, distance)
    const contributing = cases.contributing[at]!
    if (contributing >= 0) keepers[contributing]!.offer(at, distance)
  }
  return keepers.map((keeper) => keeper.kept)
}
