import { type CaseState, lookNames, requirementText, switchReplacement } from '@/lib/core/guard'
import type { Comparison, Instrument } from '@/lib/core/reading'
import type { Setpoint } from '@/lib/records/view/setpoint'

type Props = { comparison: Comparison; instrument: Instrument; setpoint: Setpoint }

/**
 * What must be on record before this switch may be called faulty, in the order of the work. Only the comparison
 * itself is known here; every look that nobody has recorded counts as not checked.
 */
export function StillMissing(props: Props) {
  const { missing } = switchReplacement(caseOf(props))
  return (
    <section aria-label="Before the switch may be called faulty">
      <h3>Before the switch may be called faulty</h3>
      <p>Each of these must be on record first. The switch comes last of all suspects.</p>
      <ol>
        {missing.map((requirement) => (
          <li key={requirement}>{requirementText[requirement]}</li>
        ))}
      </ol>
    </section>
  )
}

function caseOf({ comparison, instrument, setpoint }: Props): CaseState {
  const judgement = comparison.run ?? comparison.start
  const key =
    judgement?.against === 'opens' ? 'opens' : judgement?.against === 'closes' ? 'closes' : 'unstated'
  const standing = setpoint.rating[key]
  return {
    complaint: comparison.run === undefined ? 'will not close' : 'opens early',
    kind: setpoint.position.body.kind,
    looks: Object.fromEntries(lookNames.map((look) => [look, 'not checked'])) as CaseState['looks'],
    part: { supersessions: [] },
    rating: {
      level: standing.level,
      action: key === 'unstated' ? 'not stated' : key,
      sources: standing.sources.map(({ source }) => source),
      stageAndElevation: 'not checked',
    },
    gauge: { zeroed: instrument.zeroed, uncertaintyKnown: true, calibration: 'not known' },
    reading: { comparison, byTeeAtTheSwitch: false },
  }
}
