import { groupedTagCode } from '@/lib/core/tag'
import type { Role } from '@/lib/records/envelope'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { tagsOn } from '@/lib/records/view/tags'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'

type Props = { furnaceId: string; file: TeamFile; names: ReadonlyMap<string, string>; role: Role }

/** The tags that lead to this furnace, how a lost one is taken back, and how another gets on. */
export function FurnaceTags({ furnaceId, file, names, role }: Props) {
  const tags = tagsOn(file, furnaceId)
  return (
    <Sheet
      title="Tags"
      foot={
        <Row>
          <ButtonLink href={`/scan?furnace=${furnaceId}`}>Scan a code here</ButtonLink>
          {role === 'manager' && (
            <ButtonLink kind="quiet" href={`/tags?furnace=${furnaceId}`}>
              Print a tag for it
            </ButtonLink>
          )}
        </Row>
      }
    >
      <Stack>
        {tags.length === 0 && <p>No tag is on it. Stick a blank one on and scan it.</p>}
        {tags.length > 0 && (
          <ul>
            {tags.map(({ id, body, by, at }) => (
              <li key={id}>
                <AsPrinted text={groupedTagCode(body.code)} />, recorded by {names.get(by) ?? 'somebody'},{' '}
                {sayDate(at)}.{' '}
                <a href={`/withdraw?record=${id}`}>Lost or replaced: withdraw {groupedTagCode(body.code)}</a>
              </li>
            ))}
          </ul>
        )}
      </Stack>
    </Sheet>
  )
}
