/**
 * The five words in which the trade says how often a finding goes with a cause, and the chance that each stands for.
 * A pair that nobody speaks of has no word: it takes the finding's usual chances, which tells nothing. Common
 * practice, no published source; each chance counts only as much as the setting `findingStrength` until a team's own
 * cases outgrow it.
 */
export const chanceOfWord = {
  'almost always': 0.92,
  usually: 0.75,
  'as often as not': 0.5,
  seldom: 0.15,
  'almost never': 0.03,
} as const

export type LikelihoodWord = keyof typeof chanceOfWord

/** How often something out of order is seen in a furnace whose trouble has nothing to do with it. */
export const usualWordOfTrouble: LikelihoodWord = 'seldom'

/** How often a danger is seen there. */
export const usualWordOfDanger: LikelihoodWord = 'almost never'

/** How often something in order is seen there. */
export const usualWordOfGoodOrder: LikelihoodWord = 'usually'

/** Values of one finding that are named together are held to this much, so that none of the others is impossible. */
export const mostNamedTogether = 0.95
