import type { Answer } from '@/lib/records/answer'
import type { HeldRecord } from '@/lib/records/fold/entry'
import type { LookUpTotal } from '@/lib/records/lookUps'
import { type Role, roles } from '@/lib/records/roles'
import {
  eitherOf,
  flag,
  listOf,
  number,
  object,
  oneOf,
  onlyThese,
  type Shape,
  text,
  thing,
  whole,
} from './shape'

/** What the server answers to a device that opens, sends and fetches. The records in it were judged by the server. */

export type Person = { id: string; name: string; role: Role }

const ofPerson = { id: text, name: text, role: oneOf(...roles) }
export const person: Shape<Person> = object(ofPerson)
export const people = listOf(object({ ...ofPerson, active: flag }, { program: flag }))

export const heldRecord: Shape<HeldRecord> = onlyThese(
  object(
    {
      id: text,
      kind: text,
      version: whole,
      body: thing,
      saidAt: text,
      author: text,
      device: text,
      seq: whole,
      receivedAt: text,
      clockShiftMs: number,
    },
    { withheld: object({ by: text, fields: listOf(text) }) },
  ),
)

/** Pictures that the server holds, or holds no longer, since the device last asked. */
export type PictureNews = {
  news: { sha256: string; held: boolean }[]
  next: number
  /** Stands for the news up to `next`; to be sent with it. */
  mark?: string
  /** What was known before is to be forgotten. */
  anew?: true
}

export type ChangesPage = {
  records: HeldRecord[]
  next: number
  more: boolean
  pictures?: PictureNews
  /** Stands for the log up to `next`; to be sent with it. */
  mark?: string
  /** The log is another than the mark stood for: a back-up was restored. */
  anew?: true
  /** By this the device hands over for this person, once somebody else is signed in. */
  handOverKey?: string
  /** A manager has ended somebody else's session on this device. */
  othersEnded?: true
}

const pictureNews: Shape<PictureNews> = object(
  { news: listOf(object({ sha256: text, held: flag })), next: whole },
  { mark: text, anew: oneOf(true) },
)
export const changesPage: Shape<ChangesPage> = object(
  { records: listOf(heldRecord), next: whole, more: flag },
  { pictures: pictureNews, mark: text, anew: oneOf(true), handOverKey: text, othersEnded: oneOf(true) },
)

export const batchAnswers: Shape<{ answers: Answer[] }> = object({
  answers: listOf(
    eitherOf<Answer>(
      object({ id: text, outcome: oneOf('stored', 'already stored'), seq: whole }),
      object({ id: text, outcome: oneOf('refused'), rule: text, sentence: text }),
      object({ id: text, outcome: oneOf('waiting for'), ids: listOf(text) }),
    ),
  ),
})

export const held = object({ held: listOf(text) })
export const holding = listOf(object({ id: text, personIds: listOf(text) }))
export const lookUpTotals: Shape<LookUpTotal[]> = listOf(object({ positionId: text, times: whole }))
export const counted = object({ counted: whole })
export const problem = object({ problem: object({ code: text, message: text }) })
