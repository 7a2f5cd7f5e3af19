import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { SupersessionBody } from '@/lib/records/kinds/supersession'
import type { FormAnswer } from './form/useRecordForm'

type SupersededForm = {
  oldPartId: string
  oldTyped: string
  newPartId: string
  newTyped: string
  setting: SupersessionBody['setting'] | ''
  kit: boolean
  statedIn: string
  on: string
}

export const freshSuperseded = (oldPartId: string): SupersededForm => ({
  oldPartId,
  oldTyped: '',
  newPartId: '',
  newTyped: '',
  setting: '',
  kit: false,
  statedIn: '',
  on: '',
})

/** What the form amounts to: that one number replaces another, and where that is stated. */
export function readSupersededForm(form: SupersededForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (form.oldPartId === '') gaps.oldPartId = 'Choose the old number.'
  if (form.newPartId === '') gaps.newPartId = 'Choose the number that replaces it.'
  if (form.setting === '') gaps.setting = 'Say whether the setting is the same, or that it is not stated.'
  if (form.statedIn.trim() === '') gaps.statedIn = 'Say where it is stated, so that somebody else finds it.'
  if (Object.keys(gaps).length > 0) return { gaps }
  const { oldPartId, newPartId, setting, kit, statedIn, on } = form
  return { body: { oldPartId, newPartId, setting, kit, statedIn, on } }
}

/** What is on file already of the two numbers and bears on the statement, in a sentence; undefined for nothing. */
export function onFileAlready(
  file: TeamFile,
  oldPartId: string,
  newPartId: string,
): { words: string; href: string } | undefined {
  const said = (from: string, to: string) =>
    counting(file.supersessions).find(
      ({ body }) => file.keptId(body.oldPartId) === from && file.keptId(body.newPartId) === to,
    )
  const same = said(oldPartId, newPartId)
  if (same !== undefined) return { words: 'This is on file already.', href: `/record?id=${same.id}` }
  const opposite = said(newPartId, oldPartId)
  return opposite === undefined
    ? undefined
    : {
        words: 'The opposite is on file. One of the two is wrong: withdraw that one.',
        href: `/record?id=${opposite.id}`,
      }
}
