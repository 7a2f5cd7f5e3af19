import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { missingToBlameSwitch } from '@/lib/records/view/case/blamedSwitch'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { dangersOf } from '@/lib/records/view/case/dangers'
import { endingNeeds } from '@/lib/records/view/case/endingNeeds'
import { judgedThen } from '@/lib/records/view/case/judgedCase'
import { positionsToProve } from '@/lib/records/view/case/positionsToProve'
import { goneSince } from '@/lib/records/view/unsuitable'

/**
 * What an ending lacked when it was said: by what was on record by then and still counts. A later visit can bring
 * what was missing; this ending was not finished by it.
 */
export function missingThen(file: TeamFile, ofCase: CaseFile, ending: Entry<EndingBody>): string[] {
  const then = asOf(file, ofCase, ending.at)
  const judged = judgedThen(file, then)
  return endingNeeds(ending.body, {
    file: then,
    judged,
    openDangers: dangersOf(file, then, judged).open,
    toProve: positionsToProve(file, then),
    missingToBlame: (cause) => missingToBlameSwitch(file, then, cause, ending.at),
  })
}

/** The case as it was on record at a moment. */
function asOf(file: TeamFile, ofCase: CaseFile, moment: string): CaseFile {
  const by = <Item extends { at: string }>(entries: readonly Item[]): Item[] =>
    entries.filter(({ at }) => at <= moment)
  return {
    ...ofCase,
    findings: by(ofCase.findings),
    readings: by(ofCase.readings),
    combustionTests: by(ofCase.combustionTests),
    repairs: by(ofCase.repairs),
    switchChecks: by(ofCase.switchChecks),
    dangerAnswers: by(ofCase.dangerAnswers),
    unsuitable: by(counting(file.foundFitted)).filter((found) => {
      const { furnaceId } = found.body
      const back = goneSince(file, found)
      return (
        furnaceId !== undefined &&
        file.keptId(furnaceId) === ofCase.furnace.id &&
        (back === undefined || back > moment)
      )
    }),
    notices: ofCase.notices
      .filter(({ entry }) => entry.at <= moment)
      .map(({ entry, lifting }) => ({
        entry,
        lifting: lifting === undefined || lifting.at > moment ? undefined : lifting,
      })),
  }
}
