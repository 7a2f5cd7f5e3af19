import { pick } from './drawing'
import { inches, type SwitchPoints } from './writing'

/** The two numbers as they are told, close and open, in inches. */
export type ToldNumbers = { close: string; open: string }

export const toldRightly = (points: SwitchPoints): ToldNumbers => ({
  close: inches(points.make),
  open: inches(points.break),
})

type Mistake = (points: SwitchPoints, sister: SwitchPoints | undefined) => ToldNumbers

/** The mistakes that people make when a number goes from mouth to ear. Common practice, no published source. */
const mistakes: readonly Mistake[] = [
  (points) => ({ close: (points.make / 10).toFixed(1), open: inches(points.break) }),
  (points) => ({ close: (points.make / 1000).toFixed(3), open: inches(points.break) }),
  (points) => ({ close: inches(points.break), open: inches(points.make) }),
  (points, sister) => toldRightly(sister ?? { ...points, make: points.break }),
]

/** The numbers with one such mistake in them. @param sister the switch most often taken for this one, if any */
export const toldWrongly = (
  random: () => number,
  points: SwitchPoints,
  sister: SwitchPoints | undefined,
): ToldNumbers => pick(random, mistakes)(points, sister)
