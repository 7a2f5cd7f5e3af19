import { strToU8, Zip, ZipDeflate } from 'fflate'
import type { CodeRange } from '@/lib/core/vocabulary'
import type { RecordKind } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { saidAtCorrected } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { bandWords, codeWords } from '@/lib/records/view/coverWords'
import { type RatingOnFile, ratingsOnFile, type ShownRating } from '@/lib/records/view/ratingsOnFile'
import { sourceWords } from '@/lib/records/view/sourceWords'
import { saidAtOf } from '@/lib/records/view/standingReports'
import type { Kinds } from '../log/judge'
import { cellAt, columnsOf } from './columns'
import { type Cell, csvOf } from './csv'
import type { Snapshot } from './snapshot'

/** UTF-8's mark, without which spreadsheets read an é as two signs. */
const byteOrderMark = '\uFEFF'

/**
 * Everything on file as a zip of CSV tables, piece by piece: the ratings with their standings, one table for each kind
 * of record, the people, and a word about how to read them.
 *
 * @param now the moment of the export, by which the ratings are judged
 */
export function* exportTables(snapshot: Snapshot, kinds: Kinds, now: Date): Generator<Uint8Array> {
  const made: Uint8Array[] = []
  const zip = new Zip((trouble, chunk) => {
    if (trouble) throw trouble
    made.push(chunk)
  })
  const file = snapshot.file()
  const names = new Map(snapshot.people.map(({ id, name }) => [id, name]))
  const ratings = ratingsOnFile(file, now.toISOString())
  const tables: [string, Iterable<string>][] = [
    ['READ ME.txt', [readMe(now)]],
    [
      'ratings.csv',
      [byteOrderMark, csvOf([ratingColumns, ...ratings.map((rating) => ratingRow(rating, file))])],
    ],
    [
      'people.csv',
      [byteOrderMark, csvOf([['id', 'name', 'role', 'active'], ...snapshot.people.map(personRow)])],
    ],
    ...Object.values(kinds).map((kind): [string, Iterable<string>] => [
      `${kind.kind.replaceAll(' ', '-')}.csv`,
      tableOf(kind, snapshot, { file, names, ratings: byPositionAndAction(ratings) }),
    ]),
  ]
  for (const [name, pieces] of tables) {
    const entry = new ZipDeflate(name, { level: 6 })
    entry.mtime = now
    zip.add(entry)
    for (const piece of pieces) {
      entry.push(strToU8(piece))
      yield* made.splice(0)
    }
    entry.push(new Uint8Array(), true)
    yield* made.splice(0)
  }
  zip.end()
  yield* made.splice(0)
}

const personRow = ({ id, name, role, active }: Snapshot['people'][number]): Cell[] => [id, name, role, active]

type Around = {
  file: TeamFile
  names: ReadonlyMap<string, string>
  ratings: ReadonlyMap<string, RatingOnFile>
}

const commonColumns = [
  'seq',
  'id',
  'version',
  'saidAt',
  'receivedAt',
  'author',
  'authorName',
  'device',
  'withdrawn.at',
  'withdrawn.by',
  'withdrawn.because',
  'withdrawn.replacedBy',
  'withheld.fields',
]

/** A number that is a rating goes out with its own source and date, never another's, and with what it stands at. */
const numberColumns = ['number.source', 'number.date', 'number.standing']
const statesRating = (kind: string): boolean => kind === 'report' || kind === 'settlement'

function* tableOf(kind: RecordKind, snapshot: Snapshot, around: Around): Generator<string> {
  const columns = columnsOf(kind)
  const standing = statesRating(kind.kind) ? numberColumns : []
  yield byteOrderMark
  yield csvOf([[...commonColumns, ...standing, ...columns.map(({ name }) => name)]])
  for (const records of snapshot.recordsOf(kind.kind)) {
    yield csvOf(
      records.map((record) => [
        ...commonCells(record, around),
        ...(standing.length === 0 ? [] : numberCells(record, around)),
        ...columns.map(({ path }) => cellAt(record.body, path)),
      ]),
    )
  }
}

function commonCells(record: HeldRecord, { file, names }: Around): Cell[] {
  const withdrawn = file.records.get(record.id)?.entry.withdrawn
  return [
    record.seq,
    record.id,
    record.version,
    saidAtCorrected(record),
    record.receivedAt,
    record.author,
    names.get(record.author),
    record.device,
    withdrawn?.at,
    withdrawn === undefined ? undefined : (names.get(withdrawn.by) ?? withdrawn.by),
    withdrawn?.reason,
    withdrawn?.replacedBy,
    record.withheld?.fields.join(' | '),
  ]
}

/** The number of a settlement is that of the report it rests on. */
function numberCells({ id, kind, body }: HeldRecord, { file, ratings }: Around): Cell[] {
  const report = file.reports.get(kind === 'report' ? id : String(body.evidenceReportId))
  if (report === undefined) return ['', '', 'Not on file']
  const rating = ratings.get(`${file.keptId(report.body.positionId)} ${report.body.action}`)
  const withdrawn = (file.records.get(id)?.entry.withdrawn ?? report.withdrawn) !== undefined
  return [
    sourceWords(report, file),
    saidAtOf(report).slice(0, 10),
    withdrawn ? 'Withdrawn' : standingOf(report.id, rating),
  ]
}

/** What the number of one report stands at: the level is the position's only where the position stands at this number. */
function standingOf(id: string, rating: RatingOnFile | undefined): string {
  const among = (some: readonly { reportId: string }[]) => some.some(({ reportId }) => reportId === id)
  if (rating === undefined) return 'Not on file'
  if ('needs' in rating) return `Needs the ${rating.needs.join(' and the ')}`
  if (among(rating.sources)) return rating.level
  if (rating.rivals.some(({ sources }) => among(sources)))
    return rating.level === 'In dispute' ? rating.level : `Another number stands, ${rating.level}`
  return among(rating.leads) ? 'A lead, not counted' : 'Not counted'
}

const byPositionAndAction = (ratings: readonly RatingOnFile[]) =>
  new Map(ratings.map((rating) => [`${rating.positionId} ${rating.action}`, rating]))

/** Columns that only a rating with a number fills; each cell has one entry for each source, in one order. */
const sourceColumns: readonly [string, (source: ShownRating['sources'][number], file: TeamFile) => string][] =
  [
    ['sources', ({ words }) => words],
    ['dates', ({ saidAt }) => saidAt.slice(0, 10)],
    ['elevation', ({ reportId }, file) => bandWords(file.reports.get(reportId)?.body ?? {})],
    [
      'revision',
      ({ reportId }, file) => rangeWords('revision', file.reports.get(reportId)?.body.revisionRange),
    ],
    ['serial', ({ reportId }, file) => rangeWords('serial', file.reports.get(reportId)?.body.serialRange)],
  ]

const rangeWords = (what: string, range: CodeRange | undefined): string =>
  range === undefined ? `${what} not stated` : codeWords(what, range)

const ratingColumns = [
  'maker',
  'range',
  'models',
  'position',
  'action',
  'positionId',
  'in dispute for',
  'needs',
  'level',
  ...sourceColumns.map(([name]) => name),
  'pascals [Pa]',
  "inchesOfWater [[in_i'H2O]]",
  'limit',
  'toleranceAbove [Pa]',
  'toleranceBelow [Pa]',
  'sense',
  'between',
  'stage',
  'probability',
  'otherValues [Pa]',
  'leads',
]

function ratingRow(rating: RatingOnFile, file: TeamFile): Cell[] {
  const about = [rating.maker, rating.range, rating.models.join(' | '), rating.position]
  const which = [...about, rating.action, rating.positionId, rating.inDisputeFor.join(' | ')]
  if ('needs' in rating) {
    const row = [...which, rating.needs.join(' | ')]
    return [...row, ...Array<Cell>(ratingColumns.length - row.length)]
  }
  return [
    ...which,
    undefined,
    rating.level,
    ...sourceColumns.map(([, words]) => rating.sources.map((source) => words(source, file)).join(' | ')),
    rating.pascals,
    rating.inchesOfWater,
    rating.limit,
    rating.toleranceAbovePascals,
    rating.toleranceBelowPascals,
    rating.sense,
    rating.between,
    rating.stage,
    rating.probability,
    rating.rivals.map(rivalCell).join(' | '),
    rating.leads.length,
  ]
}

/** @example '162 (Distributor, not read back, 2024-03-01)' */
const rivalCell = ({ pascals, sources }: ShownRating['rivals'][number]): string =>
  `${pascals} (${sources.map(({ words, saidAt }) => `${words}, ${saidAt.slice(0, 10)}`).join('; ')})`

const readMe = (now: Date): string =>
  [
    `Everything on file on ${now.toISOString()}, as tables.`,
    '',
    'Each table is CSV by RFC 4180: UTF-8 with its mark, commas, CR LF, the names of the columns in the first line.',
    'The unit of a number stands behind the name of its column, as its UCUM code.',
    'ratings.csv has each rating with its level, its sources and their dates. A number without them is no setpoint:',
    'copy none without its line, and no other value without the sources behind it. The standing is that of a furnace of',
    'which nothing more is known. Where the number depends on the furnace there is none, and “needs” says on what; its',
    'reports are in report.csv, each with what it holds for. “in dispute for” names every furnace on file, elevation,',
    'revision, serial and part for which its sources contradict each other, also where the level is another.',
    'In report.csv and settlement.csv “number.source” and “number.date” are the number’s own, and “number.standing” is',
    'what that number stands at.',
    'Pressures are magnitudes; the column “sense” says suction or pressure.',
    'A text that begins with = + - or @ has an apostrophe in front, so that no spreadsheet runs it. Take it off to have',
    'the text letter for letter. Numbers have none.',
    'What was withdrawn is in the tables, with who withdrew it, when and why. What was withheld says [withheld].',
    'The JSON export is the one that can be taken into an empty server.',
    '',
  ].join('\r\n')
