import type { TeamFile } from '@/lib/records/fold/teamFile'
import { readText } from '../report/reportForm'
import type { AnswerState } from './AnswerFields'
import { type CallForm, isGeneralPurpose, isTyped, rungIn } from './callForm'

/** What keeps a call from being saved, by field: a sentence for whoever still has the other side on the line. */
export function troubleIn(
  file: TeamFile,
  form: CallForm,
  answers: readonly AnswerState[],
): ReadonlyMap<string, string> {
  const gaps = new Map<string, string>()
  const rung = rungIn(file, form)
  const typed = answers.filter(({ answer }) => isTyped(answer))
  if (rung.name === '')
    gaps.set('organisation', 'Say whom you rang: choose the organisation, or type its name.')
  else if (rung.source === '') gaps.set('newSource', 'Say whether it is the maker’s line or a distributor.')
  if (form.outcome === '') gaps.set('outcome', 'Say what became of the call.')
  if (form.outcome === 'ring back' && form.ringBackAt === '')
    gaps.set('ringBackAt', 'Say when to ring back: date and time.')
  if (form.outcome === 'answered' && typed.length === 0)
    gaps.set('answers', 'Type the number they gave, or say what else became of the call.')
  if (
    typed.some(
      ({ answer, open, bodies }) => !readText(answer.report).ok || open.size > 0 || bodies.length === 0,
    )
  )
    gaps.set('answers', 'A number above is not clear yet. Put it right, or leave it out.')
  if (typed.some(({ answer }) => answer.replaces !== '' && answer.setting === ''))
    gaps.set('answers', 'Say whether the setting changed with the new part number, or that they do not say.')
  if (typed.some(({ answer }) => isGeneralPurpose(file, answer)))
    gaps.set(
      'answers',
      'A number of a general-purpose switch is no rating, and its part is no repair. Leave it out, and record that they offered it.',
    )
  return gaps
}
