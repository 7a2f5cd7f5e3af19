import type { FurnaceRating, RatingStanding } from '@/lib/core/rating'
import type { Action } from '@/lib/core/vocabulary'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { FurnaceBody } from '../kinds/furnace'
import type { PositionBody } from '../kinds/position'
import { openQuestions, type Question, questionsIn } from './desk/questions'
import { furnaceForRating } from './furnaceForRating'
import { onceAdded } from './onceAdded'
import { ratingAt, ratingSettings } from './setpoint'

/** One thing that is another once records are withdrawn. */
export type WithdrawalEffect =
  | {
      what: 'standing'
      position: Entry<PositionBody>
      /** The furnace that it is so for, where it is not so for all. */
      furnace: Entry<FurnaceBody> | undefined
      action: Action
      before: RatingStanding
      after: RatingStanding
    }
  /**
   * An old list goes, or comes back, with all that it brought. Its ratings are counted and not told one by one: there
   * may be many thousands.
   */
  | {
      what: 'import goes' | 'import comes back'
      reports: number
      /** At how many switch positions these reports are. */
      positions: number
      /** The makers, ranges and positions that go or come with them. */
      things: { kind: string }[]
    }
  /** Nobody has answered it any more. */
  | { what: 'question opens'; question: Question }
  /** Nobody asks it any more. */
  | { what: 'question ends'; question: Question }

/**
 * What withdrawing some records would change of ratings and of questions, worked out with the withdrawals in the
 * file. A withdrawal that is withdrawn brings its record back, which is an effect as well.
 * @param saying who would withdraw them and when, ISO 8601
 */
export function withdrawalEffects(
  file: TeamFile,
  recordIds: readonly string[],
  saying: { id: string; saidAt: string },
): WithdrawalEffect[] {
  const after = onceAdded(
    file,
    recordIds.map((record) => ({ kind: 'withdrawal', body: { record, reason: 'Not said yet.' } })),
    saying,
  )
  return [
    ...standingsChanged(file, after, recordIds, saying.saidAt),
    ...importsChanged(file, after),
    ...questionsChanged(file, after),
  ]
}

const actions: readonly (readonly [keyof Omit<FurnaceRating, 'asks'>, Action])[] = [
  ['closes', 'closes'],
  ['opens', 'opens'],
  ['unstated', 'not stated'],
]

function standingsChanged(
  file: TeamFile,
  after: TeamFile,
  recordIds: readonly string[],
  now: string,
): WithdrawalEffect[] {
  const touched = recordIds.flatMap((id) => touchedBy(file, id))
  const positions = new Set(touched.flatMap(({ positionIds }) => positionIds.map(file.keptId)))
  const furnaceIds = new Set(touched.flatMap(({ furnaceIds: ids }) => ids.map(file.keptId)))
  const furnaces = [undefined, ...[...furnaceIds].flatMap((id) => file.furnaces.get(id) ?? [])]
  const settings = { before: ratingSettings(file, now), after: ratingSettings(after, now) }
  return [...positions].flatMap((id) => {
    const position = file.positions.get(id)
    if (position === undefined) return []
    const known = new Set<string>()
    return furnaces.flatMap((furnace) => {
      const which = furnace === undefined ? {} : furnaceForRating(furnace)
      const was = ratingAt(file, position, which, settings.before)
      const then = ratingAt(after, position, which, settings.after)
      return actions.flatMap(([key, action]): WithdrawalEffect[] => {
        const [one, other] = [was[key], then[key]]
        const same = one.level === other.level && one.pascals === other.pascals && one.limit === other.limit
        // What changes for every furnace is not said once more for one of them.
        const change = [action, one.level, one.pascals, other.level, other.pascals].join(' ')
        if (same || known.has(change)) return []
        known.add(change)
        return [{ what: 'standing', position, furnace, action, before: one, after: other }]
      })
    })
  })
}

type Touched = { positionIds: string[]; furnaceIds: string[] }

/** The switches whose rating can depend on a record, and the furnaces for which it can alone. */
function touchedBy(file: TeamFile, id: string, passed: readonly string[] = []): Touched[] {
  const found = file.records.get(id)
  if (found === undefined || passed.includes(id)) return []
  const on = (...ids: readonly unknown[]): Touched[] =>
    ids.flatMap((each) => (typeof each === 'string' ? touchedBy(file, each, [...passed, id]) : []))
  const { body } = found.entry
  switch (found.kind) {
    case 'report':
      return [
        {
          positionIds: [String(body.positionId)],
          furnaceIds: typeof body.furnaceId === 'string' ? [body.furnaceId] : [],
        },
      ]
    case 'position':
      return [{ positionIds: [id], furnaceIds: [] }]
    case 'settlement':
      return on(body.evidenceReportId, ...(body.overruledReportIds as string[]))
    case 'part':
      return [
        ...on(...(body.positionIds as string[])),
        ...on(
          ...[...file.reports.values()]
            .filter((report) => report.body.readOffPart === id)
            .map((report) => report.id),
        ),
      ]
    case 'supersession':
      return on(body.oldPartId, body.newPartId)
    case 'same as':
      return on(body.kept, body.duplicate)
    case 'withdrawal':
      return on(body.record)
    default:
      return []
  }
}

function importsChanged(file: TeamFile, after: TeamFile): WithdrawalEffect[] {
  const [going, coming] = [withItsImport(after), withItsImport(file)]
  return [
    importEffect(file, 'import goes', new Set([...going].filter((id) => !coming.has(id)))),
    importEffect(file, 'import comes back', new Set([...coming].filter((id) => !going.has(id)))),
  ].filter((effect) => effect !== undefined)
}

/** The records that are withdrawn because their import is. */
const withItsImport = (file: TeamFile): Set<string> =>
  new Set(
    [...file.importedFrom.keys()].filter(
      (id) => file.records.get(id)?.entry.withdrawn?.withImport !== undefined,
    ),
  )

function importEffect(
  file: TeamFile,
  what: 'import goes' | 'import comes back',
  ids: ReadonlySet<string>,
): WithdrawalEffect | undefined {
  if (ids.size === 0) return undefined
  const records = [...ids].flatMap((id) => file.records.get(id) ?? [])
  const reports = records.filter(({ kind }) => kind === 'report')
  return {
    what,
    reports: reports.length,
    positions: new Set(reports.map(({ entry }) => file.keptId(String(entry.body.positionId)))).size,
    things: records.filter(({ kind }) => kind !== 'report').map(({ kind }) => ({ kind })),
  }
}

function questionsChanged(file: TeamFile, after: TeamFile): WithdrawalEffect[] {
  const stillThere = new Set(questionsIn(after).flatMap(idsOf))
  const openBefore = new Set(openQuestions(file).flatMap(idsOf))
  const opens = openQuestions(after)
    .filter((question) => !idsOf(question).some((id) => openBefore.has(id)))
    .filter((question) => questionsIn(file).some((was) => was.lead.id === question.lead.id))
  const ends = questionsIn(file).filter((question) => !idsOf(question).some((id) => stillThere.has(id)))
  return [
    ...opens.map((question) => ({ what: 'question opens' as const, question })),
    ...ends.map((question) => ({ what: 'question ends' as const, question })),
  ]
}

const idsOf = ({ requests, alsoAsked }: Question): string[] => [...requests, ...alsoAsked].map(({ id }) => id)
