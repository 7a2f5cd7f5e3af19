import { causeById } from '@/lib/catalogue/causes'
import type { RankedCause } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { Fold } from '../../ui/paper/Fold'
import { Quiet } from '../../ui/words/Quiet'
import { CaseLink } from './CaseLink'
import { causeName } from './causeName'
import { chanceWord, perCent, spanWords } from './chanceWords'
import { findingWords } from './findingWords'
import styles from './work.module.css'

/** Findings named before the rest folds away. */
const first = 3

/** One cause: how likely, what speaks for and against it, how it is confirmed and mended. */
export function CauseRow({ ranked, file }: { ranked: RankedCause; file: TeamFile }) {
  const { cause, probability, interval90, forIt, againstIt, similarCases, weightOfCases } = ranked
  const entry = causeById(cause)
  return (
    <li className={styles.cause}>
      <h3>{causeName(cause)}</h3>
      <p>
        <b>{chanceWord(probability)}</b>: {perCent(probability)}{' '}
        {weightOfCases > 0 && <small>({spanWords(interval90)}, as sure as your past cases allow)</small>}
      </p>
      {ranked.danger && (
        <p className={styles.dangerWords}>Dangerous: it stays in sight however rare it is.</p>
      )}
      <Evidence title="For it" evidence={forIt} />
      <Evidence title="Against it" evidence={againstIt} />
      {similarCases.length > 0 && (
        <p>
          Past cases with this cause:{' '}
          {similarCases.map((similar, place) => (
            <span key={similar.id}>
              {place > 0 && ', '}
              <CaseLink id={similar.id} file={file} />
              {similar.disagreements.length > 0 && ` (${similar.disagreements.length} found otherwise)`}
            </span>
          ))}
        </p>
      )}
      {entry !== undefined && (
        <Fold summary="Why it does this, how to confirm it, how it is mended">
          {() => (
            <>
              <p>{entry.mechanism}</p>
              <p>
                <b>Confirm</b> ({entry.confirm.state}, {entry.confirm.minutes} min): {entry.confirm.what}
                {entry.confirm.putBack && <> Put back: {entry.confirm.putBack}</>}
              </p>
              <p>
                <b>Mend</b> ({entry.fix.minutes.join(' to ')} min): {entry.fix.what}
              </p>
              {entry.hazards.length > 0 && (
                <p className={styles.dangerWords}>
                  {entry.hazards.join(' ')} The maker’s instructions come first.
                </p>
              )}
              <Quiet>Source: {entry.source}.</Quiet>
            </>
          )}
        </Fold>
      )}
    </li>
  )
}

function Evidence({ title, evidence }: { title: string; evidence: RankedCause['forIt'] }) {
  if (evidence.length === 0) return null
  const words = evidence.map(({ finding, value }) => findingWords(finding, value))
  return (
    <p>
      {title}: {words.slice(0, first).join('; ')}
      {words.length > first && ` and ${words.length - first} more`}.
    </p>
  )
}
