import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Question } from '@/lib/records/view/desk/questions'
import { rangeWords } from '../equipment/candidates'
import { setpointHref } from '../setpoint/setpointAddress'

type Named = Pick<Question, 'lead' | 'position' | 'range'>

/** What a question is about: the switch and its range, or what was said of them. */
export const questionTitle = (file: TeamFile, { lead, position, range }: Named): string =>
  position === undefined
    ? [lead.body.positionName, lead.body.model].filter(Boolean).join(', ') || 'A switch that was not named'
    : [position.body.name, range && rangeWords(file, range)].filter(Boolean).join(', ')

/** Where a question’s switch is shown: its card, with the furnace that was asked about; else the desk. */
export function questionCard(file: TeamFile, { position, answers, furnaces }: Question): string {
  const positionId = answers.at(-1)?.body.positionId ?? position?.id
  return positionId === undefined
    ? '/phone-desk'
    : setpointHref({
        positionId: file.keptId(positionId),
        ...(furnaces[0] === undefined ? {} : { furnaceId: furnaces[0].id }),
      })
}

/** One asker after the other, for a sentence: “Ines Talvik and Lale Brook”. */
export function listNames(people: readonly string[], names: ReadonlyMap<string, string>): string {
  const said = people.map((id) => names.get(id) ?? 'somebody whose name is not on this device')
  return said.length < 2 ? (said[0] ?? 'nobody') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`
}
