import type { TeamFile } from '../../fold/teamFile'
import { needs } from '../../kinds/ratingRequest'
import { isLeftOff } from '../case/leftOff'
import type { Question } from './questions'

export type Need = (typeof needs)[number]

/** People who bear cold badly, and a furnace that may not run, come before everything else. */
const firstOfAll: readonly Need[] = ['infants', 'elderly or ill people', 'furnace left off']

/**
 * Why a question matters now, in the order of the list: what any of its askers said, and that a furnace is left off
 * now.
 */
export function needsOf(file: TeamFile, question: Question): Need[] {
  const said = new Set<Need>([...question.requests, ...question.alsoAsked].flatMap(({ body }) => body.needs))
  if (question.furnaces.some(({ id }) => isLeftOff(file, id))) said.add('furnace left off')
  return needs.filter((need) => said.has(need))
}

/**
 * Questions in the order of need: those with people at risk or a furnace left off first, more of it before less; then
 * frost outside; then a cold house and no other heat; then the day on which it was asked, the oldest first; then how
 * many ask; then the moment. The order is common practice, no published source.
 */
export function byNeed(file: TeamFile, questions: readonly Question[]): Question[] {
  const ranked = questions.map((question) => {
    const all = needsOf(file, question)
    const first = all.filter((need) => firstOfAll.includes(need)).length
    const frost = Number(all.includes('freezing outside'))
    const asked = question.askers[0]?.at ?? question.lead.at
    return { question, first, frost, cold: all.length - first - frost, day: asked.slice(0, 10), asked }
  })
  return ranked
    .toSorted(
      (a, b) =>
        b.first - a.first ||
        b.frost - a.frost ||
        b.cold - a.cold ||
        a.day.localeCompare(b.day) ||
        b.question.askers.length - a.question.askers.length ||
        a.asked.localeCompare(b.asked),
    )
    .map(({ question }) => question)
}
