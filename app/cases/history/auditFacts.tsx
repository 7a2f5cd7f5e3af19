import type { ReactNode } from 'react'
import { isCalibrationPast } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingWay } from '@/lib/records/kinds/ending'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { neverFittedIn } from '@/lib/records/neverFitted'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { dangersOf } from '@/lib/records/view/case/dangers'
import { gaugeThen } from '@/lib/records/view/case/gaugeThen'
import { judgedThen } from '@/lib/records/view/case/judgedCase'
import { heightWords } from '../../furnace/heightWords'
import type { Fact } from '../../ui/paper/Facts'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { saidHow } from '../end/endingWords'
import { causeName } from '../work/causeName'
import { missingThen } from './missingThen'
import { isBefore } from './momentWords'
import type { Told } from './told'

type Facts = {
  told: readonly Told[]
  file: TeamFile
  ofCase: CaseFile
  names: ReadonlyMap<string, string>
}

const none = 'not on record'

/** What an auditor or insurer asks of a case (common practice, no published source), in the order of the asking. */
export function auditFacts({ told, file, ofCase, names }: Facts): Fact[] {
  const counting = told.filter(({ entry }) => entry.withdrawn === undefined)
  const of = <Kind extends Told['kind']>(kind: Kind) =>
    counting.filter((one): one is Extract<Told, { kind: Kind }> => one.kind === kind)
  const readings = of('reading').map(({ entry }) => entry)
  const limits = readings.filter(({ body }) => (body.against ?? []).length > 0)
  const ending = of('ending').at(-1)?.entry
  const parts = of('repair').flatMap(({ entry }) => {
    const part = entry.body.fittedPart === undefined ? undefined : file.parts.get(entry.body.fittedPart)
    return [
      ...(part === undefined
        ? []
        : [`${part.body.partNumber}, listed in ${part.body.listedIn}, from: ${entry.body.partFrom ?? none}`]),
      ...(entry.body.parts === undefined || neverFittedIn(entry.body)?.field === 'parts'
        ? []
        : [entry.body.parts]),
    ]
  })
  const after = (list: readonly { entry: { body: { when: string } } }[]) =>
    list.filter(({ entry }) => entry.body.when === 'after repair').length
  const notices = of('shut-down notice').map(({ entry }) => entry)
  const late = counting.filter(({ entry }) => {
    const on = 'on' in entry.body ? entry.body.on : undefined
    return on !== undefined && isBefore(on, entry.at)
  })
  const withdrawn = told.length - counting.length
  return [
    fact('who', 'Who, under which licence', people(told, names)),
    fact('unit', 'The furnace', unit(ofCase)),
    fact(
      'found',
      'Condition found',
      `${some(of('finding').length, 'finding')}, ${some(readings.length - after(of('reading')), 'reading')} and ${some(of('combustion test').length - after(of('combustion test')), 'CO test')} as found`,
    ),
    fact('gauges', 'Instruments', instruments(file, readings)),
    fact(
      'limits',
      'Limits as they stood that day',
      readings.length === 0
        ? 'no reading was taken'
        : `written down with ${limits.length} of ${some(readings.length, 'reading')}, each with level and sources`,
    ),
    fact(
      'decision',
      'Decision and reason',
      ending === undefined
        ? 'the visit is not ended'
        : `${saidHow(ending.body.how, missingThen(file, ofCase, ending).length === 0)}${ending.body.mainCause === undefined ? '' : `: ${causeName(ending.body.mainCause)}, test: ${ending.body.confirmingTest ?? none}`}${ending.body.declinedBecause === undefined ? '' : `: ${ending.body.declinedBecause}`}`,
    ),
    fact('parts', 'Parts and where from', parts.length === 0 ? none : parts.join('; ')),
    fact(
      'after',
      'After the repair',
      `${some(after(of('reading')), 'reading')}, ${some(after(of('combustion test')), 'CO test')}`,
    ),
    fact(
      'notices',
      'Tag and notice',
      notices.length === 0
        ? noNotice(file, ofCase, ending?.body.how)
        : notices.map((notice) => (
            <div key={notice.id}>
              <a href={`/notice?id=${notice.id}`}>{notice.body.found}</a>{' '}
              {notice.body.tagged ? 'Tagged.' : 'Not tagged.'}
            </div>
          )),
    ),
    fact('signature', 'Owner’s signature', 'kept on paper, not in this file'),
    fact(
      'corrections',
      'Corrections',
      withdrawn === 0
        ? 'none: nothing was withdrawn'
        : `${some(withdrawn, 'record')} withdrawn; both the record and the reason stay below`,
    ),
    fact(
      'late',
      'Recorded after its day',
      late.length === 0
        ? 'nothing'
        : late.map(({ kind, entry }) => (
            <div key={entry.id}>
              <a href={`/record?id=${entry.id}`}>{kind}</a>
            </div>
          )),
    ),
    fact(
      'clock',
      'Clock',
      'each device’s own, put right by the server’s where it was more than a minute off; shown in the zone named at each day',
    ),
  ]
}

const fact = (key: string, name: string, value: ReactNode): Fact => ({ key, name, value })

/** Each gauge as it stood when it was read, and how many of its readings were taken past its calibration. */
function instruments(file: TeamFile, readings: readonly Entry<ReadingBody>[]): string {
  const taken = new Map<string, { words: string; readings: number; past: number }>()
  for (const { body, at } of readings) {
    if (body.gaugeId === undefined) continue
    const gauge = gaugeThen(file, body.gaugeId, at)?.body
    const due = gauge?.calibrationDue
    const words =
      gauge === undefined
        ? 'a gauge that is not on this device'
        : `${gauge.name}, calibration due ${due === undefined ? none : sayDate(due)}`
    const before = taken.get(words) ?? { words, readings: 0, past: 0 }
    const past = before.past + Number(isCalibrationPast(due, at))
    taken.set(words, { words, readings: before.readings + 1, past })
  }
  if (taken.size === 0) return none
  return [...taken.values()]
    .map(({ words, readings: all, past }) =>
      past === 0 ? words : `${words}: run out at ${past} of its ${some(all, 'reading')}`,
    )
    .join('; ')
}

/** Where no notice is on record: whether one is due, because it was left off or a danger is open. */
function noNotice(file: TeamFile, ofCase: CaseFile, how: EndingWay | undefined): string {
  const isLeftOff =
    how === 'left off' || ofCase.leftOffUnnoticed.some(({ body }) => body.caseId === ofCase.entry.id)
  return isLeftOff || dangersOf(file, ofCase, judgedThen(file, ofCase)).open.length > 0
    ? 'none is recorded, and one is due'
    : 'none is recorded'
}

const some = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`

/** Everybody who recorded something, with the licences that their visits name. */
function people(told: readonly Told[], names: ReadonlyMap<string, string>): string {
  const licences = new Map<string, Set<string>>()
  for (const { kind, entry } of told) {
    const held = licences.get(entry.by) ?? new Set()
    if ((kind === 'visit' || kind === 'lifting') && entry.body.licence !== undefined)
      held.add(entry.body.licence)
    licences.set(entry.by, held)
  }
  return [...licences]
    .map(([person, held]) =>
      [
        names.get(person) ?? 'somebody whose name is not on this device',
        ...[...held].map((licence) => `licence ${licence}`),
      ].join(', '),
    )
    .join('; ')
}

function unit({ furnace, entry }: CaseFile): ReactNode {
  const { siteLabel, model, serial, revision, elevationMetres } = furnace.body
  return (
    <>
      {siteLabel}: <AsPrinted text={model} />, serial{' '}
      {serial === undefined ? none : <AsPrinted text={serial} />}
      {entry.body.serialSeen !== undefined && (
        <>
          {' '}
          (that day: <AsPrinted text={entry.body.serialSeen} />)
        </>
      )}
      {revision !== undefined && (
        <>
          , revision <AsPrinted text={revision} />
        </>
      )}
      , {elevationMetres === undefined ? 'elevation not on record' : heightWords(elevationMetres)}
    </>
  )
}
