import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { goneSince, putRightBy } from '@/lib/records/view/unsuitable'
import { shutDown } from '../ui/danger/dangerWords'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'
import { fittedDangers, fittedSentence, notProvenSafe, whatWords } from './fittedWords'
import styles from './foundFitted.module.css'

type Props = { found: Entry<FoundFittedBody>; file: TeamFile }

/** What is in a furnace although it should not be, what to do now, and whether the factory part is back. */
export function FittedWarning({ found, file }: Props) {
  const { body } = found
  const furnace = body.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(body.furnaceId))
  const back = putRightBy(file, found)
  const gone = goneSince(file, found)
  const backPart =
    back?.body.fittedPart === undefined ? undefined : file.parts.get(file.keptId(back.body.fittedPart))
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
      {back !== undefined ? (
        <p>
          Since then, {sayDate(back.body.on)}: <a href={`/record?id=${back.id}`}>{back.body.done}</a>
          {backPart !== undefined && `, factory part ${backPart.body.partNumber}`}. That is proven only by
          readings taken afterwards.
        </p>
      ) : gone !== undefined ? (
        <p>Looked for again {sayDate(gone.slice(0, 10))}, and ruled out. Readings prove the rest.</p>
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
