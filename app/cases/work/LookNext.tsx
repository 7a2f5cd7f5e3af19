import { checkById } from '@/lib/catalogue/checks'
import type { PlannedCheck } from '@/lib/core/diagnosis'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { Fold } from '../../ui/paper/Fold'
import { Sheet } from '../../ui/paper/Sheet'
import { Quiet } from '../../ui/words/Quiet'
import { CheckFindings } from './CheckFindings'
import { CheckLines } from './CheckLines'
import { causeName } from './causeName'
import { perCent } from './chanceWords'
import { findingWords } from './findingWords'
import type { CaseWork } from './useCaseWork'
import styles from './work.module.css'

/** Checks shown at a time: more is a list nobody reads kneeling. */
const best = 3

type Props = { planned: readonly PlannedCheck[]; view: CaseView; work: CaseWork; mayAdd: boolean }

/** The few checks that are worth doing next: the least time for the most told, dangers and plain looks first. */
export function LookNext({ planned, ...rest }: Props) {
  return (
    <Sheet title="Look at next" sub="Dangers first, then looks, then tools, then taking apart.">
      {planned.length === 0 ? (
        <p>Every check is done. Compare the readings, then end the visit.</p>
      ) : (
        <ol className={styles.causes}>
          {planned.slice(0, best).map((check) => (
            <Planned key={check.check} planned={check} {...rest} />
          ))}
        </ol>
      )}
    </Sheet>
  )
}

function Planned({ planned, ...rest }: Omit<Props, 'planned'> & { planned: PlannedCheck }) {
  const check = checkById(planned.check)
  if (check === undefined) throw new RangeError(`No check is called ${planned.check}`)
  return (
    <li className={styles.cause}>
      <h3>{check.name}</h3>
      <CheckLines check={check} />
      <Quiet>Why: {whyWords(planned)}</Quiet>
      <Fold summary="Record what you see">{() => <CheckFindings {...rest} check={check} />}</Fold>
    </li>
  )
}

/** What the check may show that would move the ranking most, and by how much. */
function whyWords({ danger, why }: PlannedCheck): string {
  if (danger) return 'a danger comes before everything else.'
  const [strongest] = why.toSorted(
    (a, b) => Math.abs(b.after - b.before) * b.chance - Math.abs(a.after - a.before) * a.chance,
  )
  if (strongest === undefined) return 'it is part of what is always looked at.'
  const { finding, value, chance, cause, before, after } = strongest
  return `if it shows “${findingWords(finding, value)}” (${perCent(chance)}), ${causeName(cause)} goes from ${perCent(before)} to ${perCent(after)}.`
}
