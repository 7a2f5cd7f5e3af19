'use client'

import { useMemo } from 'react'
import type { FurnaceForRating } from '@/lib/core/rating'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import type { Question } from '@/lib/records/view/desk/questions'
import { ratingSettings, setpointOf, sisterOf } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { levelOnceSaved, onceSaved } from '../report/onceSaved'
import { openQuestions as gapsIn, type ReportForm, readText, reportBodies } from '../report/reportForm'
import { looksSwapped, stagesTurnedRound, verdictsOn } from '../report/verdicts'
import { wholeReport } from '../report/wholeReport'
import { furnaceOf } from '../setpoint/setpointAddress'
import type { AnswerState } from './AnswerFields'
import { type AnswerForm, answeredBy, asReport, type CallForm, isTyped, type Rung, rungIn } from './callForm'

/** What may stay open while a number is already held against what is on file. */
const mayWait: readonly (keyof ReportForm)[] = ['covers', 'confirmed', 'organisation', 'source']

/** Every number of the call as it stands: what it would record, and what it means beside what is on file. */
export function useAnswers(form: CallForm, taken: readonly Question[], now: string): AnswerState[] {
  const { file, me } = useDeviceState()
  const { unit } = usePreference()
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  return useMemo(() => {
    const rung = rungIn(file, form)
    const drafts = form.answers.map((answer) => ({ answer, ...draftOf(file, form, answer, taken, rung) }))
    return drafts.map(({ answer, bodies, open }): AnswerState => {
      const position = file.positions.get(answer.positionId)
      const furnace = furnaceFor(file, taken, answer.positionId)
      const setpoint = position && setpointOf(file, position.id, furnace, settings)
      if (setpoint === undefined || bodies.length === 0)
        return { answer, bodies: [], levels: [], verdicts: [], open }
      const together = drafts.filter((draft) => draft.answer.positionId === answer.positionId)
      const all = together.flatMap((draft) => draft.bodies)
      const from = all.indexOf(bodies[0]!)
      const after = onceSaved({ bodies: all, setpoint, file, me: me.id, now, furnace })
      const sister = sisterOf(file, setpoint.position)
      const sisterRating = sister && setpointOf(file, sister.id, furnace, settings)?.rating
      const swapped = drafts.some((other) =>
        other.bodies.some((one) => bodies.some((two) => looksSwapped(one, two) || looksSwapped(two, one))),
      )
      const verdicts = bodies.flatMap((body, index) =>
        verdictsOn({
          body,
          together: bodies,
          index: from + index,
          before: setpoint.rating,
          after,
          ...(sister === undefined || sisterRating === undefined
            ? {}
            : { sister: { name: sister.body.name, rating: sisterRating } }),
          unit,
        }),
      )
      const said = verdicts.some(({ words }) => words === stagesTurnedRound.words)
      return {
        answer,
        bodies,
        open,
        levels: bodies.map((_, index) => levelOnceSaved(after, from + index)),
        verdicts: swapped && !said ? [...verdicts, stagesTurnedRound] : verdicts,
      }
    })
  }, [file, form, taken, now, settings, me.id, unit])
}

export const furnaceFor = (
  file: TeamFile,
  taken: readonly Question[],
  positionId: string,
): FurnaceForRating =>
  furnaceOf(file, { furnaceId: (answeredBy(file, taken, positionId) ?? taken[0])?.furnaces[0]?.id })

function draftOf(
  file: TeamFile,
  form: CallForm,
  answer: AnswerForm,
  taken: readonly Question[],
  rung: Rung,
): { bodies: ReportBody[]; open: ReadonlyMap<keyof ReportForm, string> } {
  const position = file.positions.get(answer.positionId)
  const report = asReport(answer, form, rung)
  const read = readText(report)
  if (position === undefined || !isTyped(answer) || !read.ok) return { bodies: [], open: new Map() }
  const gaps = gapsIn(report, read.value, position.body.kind)
  // Whom the call reaches is asked for the whole call, not at each number.
  const open = new Map([...gaps].filter(([field]) => field !== 'organisation' && field !== 'source'))
  if ([...gaps.keys()].some((field) => !mayWait.includes(field))) return { bodies: [], open }
  const furnace = furnaceFor(file, taken, answer.positionId)
  const drafts = reportBodies(
    {
      ...report,
      source: report.source === '' ? 'distributor' : report.source,
      organisation: report.organisation === '' ? 'whoever is rung' : report.organisation,
      covers: report.covers || 'not stated',
    },
    read.value,
    { positionId: position.id, furnaceId: furnace.id, serial: furnace.serial, position: position.body },
  )
  const bodies = drafts.flatMap(wholeReport)
  return { bodies: bodies.length === drafts.length ? bodies : [], open }
}
