import type { CaseTable } from './caseTable'
import type { Catalogue, Context } from './catalogue'
import { compareFindings } from './compareFindings'
import type { Observed } from './readObservations'

/** How far every past case is from the present one. Cases fall into classes of equal distance. */
export type Distances = {
  /** The class of every case, in the table's order. */
  classes: Int32Array
  /** By class. */
  distances: Float64Array
}

/** And what each past case therefore weighs. */
export type Neighbourhood = Distances & {
  /** By class; 0 for every class without weight. */
  weights: Float64Array
  /** How many cases have weight. */
  kept: number
}

/** Distances closer than this are the same distance reached by sums in another order. */
const sameDistance = 1e-12

/**
 * Weighs past cases by their distance to the present one, with the linear kernel of E. Frank, M. Hall &
 * B. Pfahringer, "Locally weighted naive Bayes", UAI 2003: w = 1 − d/h, where the bandwidth h is the first distance
 * beyond the k-th nearest, so that all ties of the k-th keep a weight; then rescaled so that the r cases with weight
 * weigh r together. With no case beyond the k-th, every case weighs 1.
 *
 * Only cases whose cause is on the list are counted and weighed. `except` leaves one case out.
 */
export function weighNeighbours(
  table: CaseTable,
  { classes, distances }: Distances,
  neighbours: number,
  except = -1,
): Neighbourhood {
  const { main } = table
  const casesIn = new Int32Array(distances.length)
  for (let at = 0; at < classes.length; at++) {
    if (main[at]! >= 0) casesIn[classes[at]!]!++
  }
  if (except >= 0 && main[except]! >= 0) casesIn[classes[except]!]!--
  return { classes, distances, ...linearKernel(distances, casesIn, neighbours) }
}

/**
 * Puts every case of the table into a class of equal distance to the present one: (disagreements + 1) / (findings
 * checked in both + 2), a share of disagreement drawn towards one half while little was checked in both (Laplace's
 * rule of succession), plus the weights of the context fields that differ, half of each that either does not state.
 * The classes lie in the table's workspace: they hold until the table is measured again.
 */
export function measureDistances(
  table: CaseTable,
  catalogue: Catalogue,
  observed: readonly Observed[],
  context: Context,
): Distances {
  const stride = observed.length + 1
  const classes = table.workspace
  const fromContext = compareContexts(table, catalogue, context, stride * stride, classes)
  compareFindings(table, observed, classes)
  const distances = new Float64Array(fromContext.length * stride * stride)
  fromContext.forEach((away, block) => {
    for (let disagreements = 0; disagreements < stride; disagreements++) {
      for (let agreements = 0; agreements + disagreements < stride; agreements++) {
        const share = (disagreements + 1) / (disagreements + agreements + 2)
        distances[(block * stride + disagreements) * stride + agreements] = share + away
      }
    }
  })
  return { classes: classes.subarray(0, table.ids.length), distances }
}

/**
 * Writes for every case the block of classes that its context puts it in, times the size of a block, and returns what
 * each block adds to the distance. A case first gets a pattern, one ternary digit for each field that the present
 * case states: the same (0), not stated (1), other (2); patterns that add the same share a block.
 */
function compareContexts(
  table: CaseTable,
  catalogue: Catalogue,
  context: Context,
  blockSize: number,
  into: Int32Array,
): number[] {
  const fields = (catalogue.context ?? []).map((field, place) => ({
    ...field,
    place,
    now: context[field.id],
  }))
  const unstated = fields.reduce((sum, { weight, now }) => sum + (now === undefined ? weight / 2 : 0), 0)
  const compared = fields.flatMap(({ weight, place, now }) =>
    now === undefined ? [] : [{ weight, place, now }],
  )
  const patternSums = compared.reduce(
    (sums, { weight }) => [0, weight / 2, weight].flatMap((more) => sums.map((sum) => sum + more)),
    [0],
  )
  // Most cases are elsewhere: all begin as other in every field, and only the exceptions are visited.
  into.fill(patternSums.length - 1)
  compared.forEach(({ place, now }, at) => {
    const digit = 3 ** at
    for (const same of table.contextPlaces[place]!.get(now) ?? []) into[same]! -= 2 * digit
    lowerUnstated(table.contextStated[place]!, digit, into)
  })
  const sums = [...new Set(patternSums)]
  if (compared.length > 0) {
    const blockOf = Int32Array.from(patternSums, (sum) => sums.indexOf(sum) * blockSize)
    for (let at = 0; at < into.length; at++) into[at] = blockOf[into[at]!]!
  }
  return sums.map((sum) => sum + unstated)
}

/** Takes `digit` off every number whose bit is not set. */
function lowerUnstated(stated: Int32Array, digit: number, into: Int32Array): void {
  for (let word = 0; word < stated.length; word++) {
    if (stated[word] === -1) continue
    for (let lane = 0; lane < 32; lane++) {
      if (((stated[word]! >>> lane) & 1) === 0) into[word * 32 + lane]! -= digit
    }
  }
}

function linearKernel(
  distances: Float64Array,
  casesIn: Int32Array,
  neighbours: number,
): Pick<Neighbourhood, 'weights' | 'kept'> {
  const weights = new Float64Array(distances.length)
  const near: number[] = []
  for (let place = 0; place < casesIn.length; place++) if (casesIn[place]! > 0) near.push(place)
  near.sort((a, b) => distances[a]! - distances[b]!)
  let kept = 0
  let last = 0
  while (last < near.length && kept < neighbours) kept += casesIn[near[last++]!]!
  const kth = last === 0 ? 0 : distances[near[last - 1]!]!
  while (last < near.length && distances[near[last]!]! - kth < sameDistance) kept += casesIn[near[last++]!]!
  if (last === near.length) {
    for (const place of near) weights[place] = 1
    return { weights, kept }
  }
  const bandwidth = distances[near[last]!]!
  let sum = 0
  for (const place of near.slice(0, last)) {
    weights[place] = 1 - distances[place]! / bandwidth
    sum += casesIn[place]! * weights[place]!
  }
  for (const place of near.slice(0, last)) weights[place]! *= kept / sum
  return { weights, kept }
}
