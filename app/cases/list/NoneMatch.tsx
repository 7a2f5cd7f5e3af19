import type { TeamFile } from '@/lib/records/fold/teamFile'
import { Empty } from '../../ui/answers/Empty'
import { Button } from '../../ui/form/Button'
import { Row } from '../../ui/paper/Stack'
import { activeFilters, type CaseFilters, noFilters } from './caseFilters'
import type { CaseRow } from './caseRows'
import { type CaseSearch, casesThatMatch } from './casesThatMatch'
import { filterWords } from './filterWords'

type Props = {
  rows: readonly CaseRow[]
  filters: CaseFilters
  search: CaseSearch
  file: TeamFile
  change: (part: Partial<CaseFilters>) => void
}

/** In place of the list when no case passes every filter: which one to take off, and what that would show. */
export function NoneMatch({ rows, filters, search, file, change }: Props) {
  const active = activeFilters(filters)
  return (
    <Empty
      what="No case matches all of this"
      why={active.map((filter) => filterWords(filter, filters, file)).join(' · ')}
      todo={
        <Row>
          {active.map((filter) => {
            const without = casesThatMatch(rows, { ...filters, [filter]: '' }, search).length
            return (
              <Button key={filter} onClick={() => change({ [filter]: '' })}>
                Take off {filterWords(filter, filters, file)} ({without === 0 ? 'still none' : without})
              </Button>
            )
          })}
          {active.length > 1 && (
            <Button kind="quiet" onClick={() => change(noFilters)}>
              Take all off ({rows.length})
            </Button>
          )}
        </Row>
      }
    />
  )
}
