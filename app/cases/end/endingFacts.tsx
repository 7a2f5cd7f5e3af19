import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { neverFittedPart } from '@/lib/records/neverFitted'
import type { Fact } from '../../ui/paper/Facts'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { causeName } from '../work/causeName'
import { putBackWords, testWords } from './endingWords'

/** What an ending says, named, in the order of the form. What it does not say is left out. */
export function endingFacts(body: EndingBody, file: TeamFile): Fact[] {
  const fact = <Said,>(
    key: string,
    name: string,
    said: Said | undefined,
    value: (said: Said) => Fact['value'],
  ) => (said === undefined ? [] : [{ key, name, value: value(said) }])
  const few = <Said,>(list: readonly Said[] | undefined) => (list?.length ? list : undefined)
  return [
    ...fact('main', 'Main cause', body.mainCause, causeName),
    ...fact('contributing', 'Contributing cause', body.contributingCause, causeName),
    ...fact('test', 'Confirming test', body.confirmingTest, (result) => testWords[result]),
    ...fact('repairs', 'Repairs', few(body.repairIds), (ids) =>
      ids.map((id) => (
        <div key={id}>
          <a href={`/record?id=${id}`}>{file.repairs.get(id)?.body.done ?? 'not on this device'}</a>
        </div>
      )),
    ),
    ...fact('minutes', 'Minutes', body.minutes, String),
    ...fact('cycles', 'Thermostat cycles watched', body.thermostatCycles, String),
    ...fact('back', 'Put back', few(body.putBack), (items) =>
      items.map((item) => putBackWords[item]).join(', '),
    ),
    ...fact('nothing', 'Nothing to put back', few(body.nothingToPutBack), (items) =>
      items.map((item) => putBackWords[item]).join(', '),
    ),
    ...fact('part', 'Part', body.partNumber, (number) => (
      <>
        <AsPrinted text={number} />
        {neverFittedPart(number) !== undefined && ', which is never fitted and counts as no part'}
      </>
    )),
    ...fact('superseded', 'Supersession checked', body.supersessionChecked, (is) => (is ? 'yes' : 'no')),
    ...fact('ordered', 'Ordered', body.orderedWhere, (where) => where),
    ...fact('follow-up', 'Follow-up', body.followUpOn, sayDate),
    ...fact('declined', 'Declined because', body.declinedBecause, (reason) => reason),
    ...fact('notice', 'Shut-down notice', body.noticeId, (id) => (
      <a href={`/notice?id=${id}`}>{file.shutDownNotices.get(id)?.body.found ?? 'not on this device'}</a>
    )),
    ...fact('note', 'Note', body.note, (note) => note),
  ]
}
