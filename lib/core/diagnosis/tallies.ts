import type { CaseTable } from './caseTable'
import { causeStatuses } from './catalogue'
import type { Neighbourhood } from './neighbourhood'
import type { Observed } from './readObservations'
import type { RankingSettings } from './settings'

/**
 * The weighed cases, summed in groups: each group holds cases of one main and one contributing cause, so that its
 * sums can be given to those causes in fixed shares. Row g of `sums` is the weight of its cases, then, for each
 * observed finding, the weight of those that were checked for it and of those that agree with it.
 */
export type Tallies = {
  width: number
  sums: Float64Array
  /** The main and contributing cause of every group, -1 for none. */
  main: Int16Array
  contributing: Int16Array
  /** The stratum (pair of causes) of every group; the groups of a stratum lie together. */
  strata: readonly { firstGroup: number; groups: number; cases: number }[]
  /** Which cases have weight, by place in the table. */
  members: Int32Array
}

/** At most this many groups together, but at least `fewestPerStratum` where a pair of causes has so many cases. */
const mostGroups = 480
const fewestPerStratum = 8

/**
 * Sums the cases that have weight. A pair of causes with few cases gets a group for each; one with many is dealt out
 * in turn over as many groups as there is room for (method of random groups: K. M. Wolter, Introduction to Variance
 * Estimation, ch. 2, from memory), which leaves the totals as they are and keeps the bootstrap quick.
 */
export function tallyNeighbours(
  table: CaseTable,
  neighbourhood: Neighbourhood,
  observed: readonly Observed[],
  settings: Pick<RankingSettings, 'statusWeights'>,
  except = -1,
): Tallies {
  const { classes, weights } = neighbourhood
  const members = membersOf(table, neighbourhood, except)
  const { strata, groupOf, main, contributing } = dealGroups(table, members)
  const width = 1 + 2 * observed.length
  const sums = new Float64Array(main.length * width)
  const statusWeights = Float64Array.from(causeStatuses, (status) => settings.statusWeights[status])
  const weightOf = new Float64Array(members.length)
  const isMember = new Int32Array(table.words)
  const membersBefore = new Int32Array(table.words)
  for (let member = 0; member < members.length; member++) {
    const at = members[member]!
    weightOf[member] = weights[classes[at]!]! * statusWeights[table.status[at]!]!
    sums[groupOf[member]! * width]! += weightOf[member]!
    if (isMember[at >>> 5] === 0) membersBefore[at >>> 5] = member
    isMember[at >>> 5]! |= 1 << (at & 31)
  }
  const addSet = (set: Int32Array, column: number) => {
    for (let word = 0; word < isMember.length; word++) {
      const inWord = isMember[word]!
      let left = set[word]! & inWord
      while (left !== 0) {
        const lowest = left & -left
        // A member's number is how many members stand before it.
        const member = membersBefore[word]! + countBits(inWord & (lowest - 1))
        sums[groupOf[member]! * width + column]! += weightOf[member]!
        left ^= lowest
      }
    }
  }
  observed.forEach(({ finding, value }, place) => {
    const agreeing = table.firstValue[finding]! + value
    addSet(table.checked.subarray(finding * table.words, (finding + 1) * table.words), 1 + 2 * place)
    addSet(table.valued.subarray(agreeing * table.words, (agreeing + 1) * table.words), 2 + 2 * place)
  })
  return { width, sums, main, contributing, strata, members }
}

/** How many bits of a 32-bit word are set. */
function countBits(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555)
  const nibbles = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333)
  return Math.imul((nibbles + (nibbles >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}

function membersOf(table: CaseTable, { classes, weights, kept }: Neighbourhood, except: number): Int32Array {
  const members = new Int32Array(kept)
  let count = 0
  for (let at = 0; at < classes.length && count < kept; at++) {
    if (weights[classes[at]!]! > 0 && table.main[at]! >= 0 && at !== except) members[count++] = at
  }
  return members
}

/** Gives every member a group: strata in the order of their pair of causes, their groups together. */
function dealGroups(table: CaseTable, members: Int32Array) {
  const others = table.catalogue.causes.length + 1
  const casesIn = new Int32Array(table.catalogue.causes.length * others)
  const pairOf = new Int32Array(members.length)
  for (let member = 0; member < members.length; member++) {
    const at = members[member]!
    const pair = table.main[at]! * others + table.contributing[at]! + 1
    pairOf[member] = pair
    casesIn[pair]!++
  }
  const pairs: number[] = []
  for (let pair = 0; pair < casesIn.length; pair++) if (casesIn[pair]! > 0) pairs.push(pair)
  const most = Math.max(fewestPerStratum, Math.floor(mostGroups / Math.max(1, pairs.length)))
  const next = new Int32Array(casesIn.length)
  const first = new Int32Array(casesIn.length)
  const end = new Int32Array(casesIn.length)
  const strata: { firstGroup: number; groups: number; cases: number }[] = []
  const main: number[] = []
  const contributing: number[] = []
  for (const pair of pairs) {
    const groups = Math.min(casesIn[pair]!, most)
    strata.push({ firstGroup: main.length, groups, cases: casesIn[pair]! })
    first[pair] = main.length
    next[pair] = main.length
    end[pair] = main.length + groups
    for (let group = 0; group < groups; group++) {
      main.push(Math.floor(pair / others))
      contributing.push((pair % others) - 1)
    }
  }
  const groupOf = new Int32Array(members.length)
  for (let member = 0; member < members.length; member++) {
    const pair = pairOf[member]!
    const group = next[pair]!
    groupOf[member] = group
    next[pair] = group + 1 === end[pair]! ? first[pair]! : group + 1
  }
  return { strata, groupOf, main: Int16Array.from(main), contributing: Int16Array.from(contributing) }
}
