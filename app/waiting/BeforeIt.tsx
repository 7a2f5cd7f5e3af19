import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordTitle } from '../record/recordTitle'
import type { MustGoFirst } from './mustGoFirst'

/** Says which records have to go before one that waits, and leads to them. */
export function BeforeIt({ refused, waiting, gone }: MustGoFirst) {
  return (
    <>
      {refused.map((record) => (
        <p key={record.id}>
          <b>It cannot go before</b> <Link record={record} />, which was refused. Deal with that one first.
        </p>
      ))}
      {waiting.map((record) => (
        <p key={record.id}>
          It goes after <Link record={record} />, which is not sent yet.
        </p>
      ))}
      {gone > 0 && (
        <p>
          <b>It cannot go:</b> it names {gone === 1 ? 'a record that is' : `${gone} records that are`} neither
          in the team’s log nor on this device any more. Record it anew without, then take this one off.
        </p>
      )}
    </>
  )
}

const Link = ({ record }: { record: RecordEnvelope }) => (
  <a href={`#${record.id}`}>{recordTitle(record.kind, record.body)}</a>
)
