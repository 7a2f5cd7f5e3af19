import type { SimilarCase } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { CaseLink } from './CaseLink'
import { causeName } from './causeName'
import { findingWords } from './findingWords'

/** The past cases most like this one, by their causes: "3 of 4 like this were …". Disagreements are named too. */
export function SimilarCases({ similar, file }: { similar: readonly SimilarCase[]; file: TeamFile }) {
  const known = similar.filter(({ cause, agreements }) => cause !== undefined && agreements.length > 0)
  if (known.length === 0) return null
  const counts = new Map<string, number>()
  for (const { cause } of known) counts.set(cause!.main, (counts.get(cause!.main) ?? 0) + 1)
  const [[main, count]] = [...counts].sort((a, b) => b[1] - a[1]) as [[string, number]]
  return (
    <details>
      <summary>
        {known.length === 1
          ? `The one past case most like this was: ${causeName(main)}`
          : `${count} of the ${known.length} past cases most like this were: ${causeName(main)}`}
      </summary>
      <ul>
        {known.map(({ id, cause, agreements, disagreements }) => (
          <li key={id}>
            <CaseLink id={id} file={file} />: {causeName(cause!.main)}, {statusWords[cause!.status]}. Same:{' '}
            {agreements.length}
            {disagreements.length > 0 && (
              <>
                . Otherwise there:{' '}
                {disagreements.map(({ finding, before }) => findingWords(finding, before)).join('; ')}
              </>
            )}
            .
          </li>
        ))}
      </ul>
    </details>
  )
}

const statusWords = {
  presumed: 'presumed: nothing proved the repair',
  confirmed: 'confirmed by readings after the repair',
  durable: 'proven durable: the furnace stayed quiet',
} as const
