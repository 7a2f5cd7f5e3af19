import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { goneSince } from '@/lib/records/view/unsuitable'
import { shutDown } from '../ui/danger/dangerWords'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'
import { fittedDangers, fittedSentence, notProvenSafe, whatWords } from './fittedWords'
import styles from './foundFitted.module.css'
import { SinceFound } from './SinceFound'

type Props = { found: Entry<FoundFittedBody>; file: TeamFile }

/** What is in a furnace although it should not be, what to do now, and whether the factory part is back. */
export function FittedWarning({ found, file }: Props) {
  const { body } = found
  const furnace = body.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(body.furnaceId))
  const gone = goneSince(file, found)
  return (
    <div className={styles.danger}>
      <p>
        <b>
          Found fitted {sayDate(body.foundOn)}: {whatWords[body.what][0]}
        </b>
        {furnace !== undefined && (
          <>
            , at <a href={`/furnace?id=${furnace.id}`}>{furnace.body.siteLabel}</a>
          </>
        )}
        , printed <AsPrinted text={body.printed} />. {fittedSentence(body)}{' '}
        <a href={`/record?id=${found.id}`}>The record</a>
      </p>
      {gone !== undefined ? (
        <SinceFound {...{ found, file }} />
      ) : (
        <>
          {fittedDangers(body, file).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <ol>
            {shutDown.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p>{notProvenSafe}</p>
        </>
      )}
    </div>
  )
}
