import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { goneSince, putRightBy } from '@/lib/records/view/unsuitable'
import { sayDate } from '../ui/words/sayDate'

type Props = { found: Entry<FoundFittedBody>; file: TeamFile }

/** What became of a switch that was found fitted although it should not be; nothing while it is still there. */
export function SinceFound({ found, file }: Props) {
  const back = putRightBy(file, found)
  const gone = goneSince(file, found)
  if (gone === undefined) return null
  if (back === undefined)
    return <p>Looked for again {sayDate(gone.slice(0, 10))}, and ruled out. Readings prove the rest.</p>
  const { fittedPart, on, done } = back.body
  const part = fittedPart === undefined ? undefined : file.parts.get(file.keptId(fittedPart))
  return (
    <p>
      Since then, {sayDate(on)}: <a href={`/record?id=${back.id}`}>{done}</a>
      {part !== undefined && `, factory part ${part.body.partNumber}`}. That is proven only by readings taken
      afterwards.
    </p>
  )
}
