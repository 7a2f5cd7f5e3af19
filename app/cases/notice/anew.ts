import { type NewRecord, newRecordId } from '@/lib/device/device'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'

const reason = 'Written anew with what was missing'

/**
 * What is said together with a notice that takes another one’s place: the older one is withdrawn, and an ending that
 * named it is said again with the new one. Both stay readable.
 */
export function replacedNotice(file: TeamFile, older: string, newer: string): NewRecord[] {
  return [
    withdrawn(older, newer),
    ...counting(file.endings)
      .filter(({ body }) => body.noticeId === older)
      .flatMap(({ id, body }) => {
        const again = newRecordId()
        return [{ id: again, kind: 'ending', body: { ...body, noticeId: newer } }, withdrawn(id, again)]
      }),
  ]
}

/** Takes back a record that another one replaces. */
export const withdrawn = (record: string, replacedBy: string): NewRecord => ({
  kind: 'withdrawal',
  body: { record, reason, replacedBy },
})
