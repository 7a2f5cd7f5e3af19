import { type RatingStanding, whyOrder } from '@/lib/core/rating'

const asksBack = {
  'break beyond make': 'Ask which is which.',
  'low fire beyond high fire': 'Ask which stage each is for.',
} as const

/** What has to be asked before a number is worked by, because it stands the wrong way round to another: sentences. */
export const lookAgainAt = ({ outOfOrder = [] }: Pick<RatingStanding, 'outOfOrder'>): string[] =>
  outOfOrder.map((disorder) => `${whyOrder[disorder]} ${asksBack[disorder]}`)
