import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { LiftingBody } from '@/lib/records/kinds/lifting'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import { ofFurnace } from '../ofFurnace'
import { unless } from './unless'

/** A shut-down notice with what lifted it, if anything did. */
export type Notice = { entry: Entry<ShutDownNoticeBody>; lifting: Entry<LiftingBody> | undefined }

/** Every notice of a furnace that was not withdrawn, oldest first. */
export function noticesOf(file: TeamFile, furnaceId: string): Notice[] {
  const notices = ofFurnace(file, file.shutDownNotices, furnaceId)
  if (notices.length === 0) return []
  const liftings = liftingsOf(file)
  return notices.map((entry) => ({ entry, lifting: liftings.get(entry.id) }))
}

const indexes = new WeakMap<TeamFile['liftings'], ReadonlyMap<string, Entry<LiftingBody>>>()

/** What lifted each notice first, by the notice; sorted once for a whole team file. */
function liftingsOf({ liftings }: TeamFile): ReadonlyMap<string, Entry<LiftingBody>> {
  const known = indexes.get(liftings)
  if (known !== undefined) return known
  const first = new Map(
    counting(liftings)
      .toReversed()
      .map((entry) => [entry.body.noticeId, entry]),
  )
  indexes.set(liftings, first)
  return first
}

/** The notice for which a furnace is left off now: the oldest that nothing has lifted. */
export const standingNotice = (file: TeamFile, furnaceId: string): Notice | undefined =>
  noticesOf(file, furnaceId).find(({ lifting }) => lifting === undefined)

/**
 * What a notice does not say yet of all that whoever comes next, and the law, will ask; sentences in the order of the
 * form, empty when it says everything.
 */
export function noticeNeeds(notice: Partial<ShutDownNoticeBody>): string[] {
  const { gas = 'not known', power = 'not known', authority, note } = notice
  const isSaidWhy = note !== undefined && note.trim() !== ''
  return [
    ...unless(gas !== 'not known', 'Whether the gas is off.'),
    ...unless(
      gas !== 'on' || isSaidWhy,
      'The gas is on: shut it off, or say in the note why it is not safe to.',
    ),
    ...unless(power !== 'not known', 'Whether the power is off.'),
    ...unless(
      power !== 'on' || isSaidWhy,
      'The power is on: shut it off, or say in the note why it is not safe to.',
    ),
    ...unless(notice.tagged === true, 'The tag on the furnace.'),
    ...unless(notice.told !== undefined && notice.toldAt !== undefined, 'Who was told, and when.'),
    ...unless(notice.writtenNotice === true, 'The written notice to the occupant.'),
    ...unless(
      authority === 'not asked for here' || (authority === 'told' && notice.authorityWho !== undefined),
      'Whether the authority or the gas supplier must be told here, and whom you told.',
    ),
    ...unless(notice.heatAndFrost !== undefined, 'How the house stays warm and free of frost.'),
  ]
}
