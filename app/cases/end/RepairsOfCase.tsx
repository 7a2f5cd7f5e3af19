import type { TeamFile } from '@/lib/records/fold/teamFile'
import { neverFittedIn } from '@/lib/records/neverFitted'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { leadingBack } from '../../equipment/form/returnTo'
import { repairHref } from '../../furnace/repairForm'
import { ButtonLink } from '../../ui/form/Button'
import { Quiet } from '../../ui/words/Quiet'
import { sayDate } from '../../ui/words/sayDate'

type Props = { ofCase: CaseFile; visitId: string; file: TeamFile; mayAdd: boolean }

/** The repairs of a case with their parts, and the way to record one more in this visit. */
export function RepairsOfCase({ ofCase, visitId, file, mayAdd }: Props) {
  const { entry, furnace, repairs } = ofCase
  return (
    <section aria-labelledby="end-repairs">
      <h2 id="end-repairs">What was done</h2>
      {repairs.length === 0 ? (
        <Quiet>No repair is on record for this case yet.</Quiet>
      ) : (
        <ul>
          {repairs.map(({ id, body }) => {
            const part =
              body.fittedPart === undefined ? undefined : file.parts.get(file.keptId(body.fittedPart))
            return (
              <li key={id}>
                {sayDate(body.on)}: <a href={`/record?id=${id}`}>{body.done}</a>
                {part !== undefined && (
                  <>
                    , factory part <span translate="no">{part.body.partNumber}</span>
                  </>
                )}
                {body.parts !== undefined && `, ${body.parts}`}
                {body.minutes !== undefined && `, ${body.minutes} min`}
                {neverFittedIn(body) !== undefined &&
                  '. It speaks of what is never fitted, and counts as no repair'}
              </li>
            )
          })}
        </ul>
      )}
      {mayAdd && (
        <ButtonLink
          href={leadingBack(
            repairHref({ furnaceId: furnace.id, caseId: entry.id, visitId }),
            `/case/end?id=${entry.id}&visit=${visitId}`,
          )}
        >
          Record a repair; what is typed here stays
        </ButtonLink>
      )}
    </section>
  )
}
