import { allOthers, fewestForCurve } from '@/lib/records/view/callbacks/curveFigure'
import { causeWords, remedyWords } from './groupWords'
import type { SectionProps } from './section'
import { TimeToCallback } from './TimeToCallback'

/** The time to a callback by cause; by the groups of causes as long as hardly a cause has furnaces enough. */
export function TimeByCause(section: SectionProps) {
  const { byCause, byCauseGroup } = section.figures.curves
  const own = byCause.curves.filter(({ key }) => key !== allOthers)
  return own.length >= 2 ? (
    <TimeToCallback
      {...section}
      name="by-cause"
      title="Time to a callback, by cause"
      figure={byCause}
      groupWords={causeWords}
      grouped={`Causes of fewer than ${fewestForCurve} furnaces are put together.`}
    />
  ) : (
    <TimeToCallback
      {...section}
      name="by-cause-group"
      title="Time to a callback, by group of causes"
      figure={byCauseGroup}
      groupWords={remedyWords}
      grouped={`Too few causes have ${fewestForCurve} furnaces in this time, so they are put together as the list of causes groups them; groups that are still smaller are one curve.`}
    />
  )
}
