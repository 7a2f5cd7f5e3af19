import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Question } from '@/lib/records/view/desk/questions'
import { rangeWords } from '../equipment/candidates'

type Named = Pick<Question, 'lead' | 'position' | 'range'>

/** What a question is about: the switch and its range, or what was said of them. */
export const questionTitle = (file: TeamFile, { lead, position, range }: Named): string =>
  position === undefined
    ? [lead.body.positionName, lead.body.model].filter(Boolean).join(', ') || 'A switch that was not named'
    : [position.body.name, range && rangeWords(file, range)].filter(Boolean).join(', ')

/** One asker after the other, for a sentence: “Ines Talvik and Lale Brook”. */
export function listNames(people: readonly string[], names: ReadonlyMap<string, string>): string {
  const said = people.map((id) => names.get(id) ?? 'somebody whose name is not on this device')
  return said.length < 2 ? (said[0] ?? 'nobody') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`
}
