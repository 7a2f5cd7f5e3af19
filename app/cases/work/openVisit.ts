import type { CaseView } from '@/lib/records/view/case/caseView'

/** The visit that is going on: the newest one without an ending. */
export const openVisit = ({ file }: CaseView): string | undefined =>
  file.visits.findLast(({ endings }) => endings.length === 0)?.entry.id
