import type { ReplayedForecast } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { CaseLink } from '../cases/work/CaseLink'
import { causeName } from '../cases/work/causeName'
import { perCent } from '../cases/work/chanceWords'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import styles from './helper.module.css'
import { type Forecaster, forecasters, type Opened } from './openedCases'

type Props = { opened: Opened; file: TeamFile }

/** The cases behind a figure: those that it counts, and those that it does not. */
export function OpenedCases({ opened: { title, whose, counted, others }, file }: Props) {
  return (
    <section className={styles.opened} aria-label={`Cases behind “${title}”`}>
      <Stack>
        <h3>{title}</h3>
        <Cases words="Counted" whose={whose} cases={counted} file={file} />
        <Cases words="Not counted" whose={whose} cases={others} file={file} />
      </Stack>
    </section>
  )
}

type CasesProps = { words: string; whose: Forecaster; cases: readonly ReplayedForecast[]; file: TeamFile }

function Cases({ words, whose, cases, file }: CasesProps) {
  return (
    <div>
      <h4>
        {words}: {cases.length}
      </h4>
      {cases.length === 0 ? (
        <Quiet>None.</Quiet>
      ) : (
        <ul className={styles.cases}>
          {cases.map(({ caseId, truth, placeOfTruth, probabilityOfTruth }) => (
            <li key={caseId}>
              <CaseLink id={caseId} file={file} />
              <Quiet inline>
                {causeName(truth)}. {forecasters[whose]}: in place {placeOfTruth[whose]}
                {whose === 'helper' && `, with ${perCent(probabilityOfTruth)}`}
              </Quiet>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
