import type { SwapFacts } from '@/lib/records/view/swaps/switchSwaps'
import { furnaceWords } from '../../equipment/candidates'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { sayDate } from '../../ui/words/sayDate'

/** Replacements that were recorded on a furnace and on no case. */
export const OutsideCases = ({ swaps }: { swaps: readonly SwapFacts[] }) => (
  <section aria-labelledby="outside-cases">
    <Stack>
      <h2 id="outside-cases">Replaced outside any case</h2>
      <Quiet>
        Nothing that was read or looked at is on record with these, so nothing can be said for or against
        them.
      </Quiet>
      <ul>
        {swaps.map(({ repair, furnace, position }) => (
          <li key={repair.id}>
            <a href={`/record?id=${repair.id}`}>{furnaceWords(furnace)}</a>, {sayDate(repair.body.on)}
            {position !== undefined && `, ${position.body.name}`}
          </li>
        ))}
      </ul>
    </Stack>
  </section>
)
