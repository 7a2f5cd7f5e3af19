import { readableFinding } from '@/lib/catalogue/findings/readableFinding'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import type { Option } from '../ui/form/option'

/** The findings that were seen on a case, the newest word on each: what a photo can show. */
export const findingOptions = ({ findings }: CaseFile): Option[] =>
  [...new Map(findings.map((entry) => [entry.body.finding, entry])).values()]
    .filter(({ body }) => body.value !== 'ruled out')
    .map(({ id, body }) => ({
      value: id,
      words: `${readableFinding(body.finding)?.name ?? body.finding}: ${body.value}`,
    }))
