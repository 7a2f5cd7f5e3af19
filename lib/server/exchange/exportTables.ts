import { strToU8, Zip, ZipDeflate } from 'fflate'
import type { RecordKind } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { saidAtCorrected } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type RatingOnFile, ratingsOnFile } from '@/lib/records/view/ratingsOnFile'
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
    ['ratings.csv', [byteOrderMark, csvOf([ratingColumns, ...ratings.map(ratingRow)])]],
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

/** A number that is a rating goes out with what the whole position stands at. */
const standingColumns = ['standing.level', 'standing.sources', 'standing.dates']
const statesRating = (kind: string): boolean => kind === 'report' || kind === 'settlement'

function* tableOf(kind: RecordKind, snapshot: Snapshot, around: Around): Generator<string> {
  const columns = columnsOf(kind)
  const standing = statesRating(kind.kind) ? standingColumns : []
  yield byteOrderMark
  yield csvOf([[...commonColumns, ...standing, ...columns.map(({ name }) => name)]])
  for (const records of snapshot.recordsOf(kind.kind)) {
    yield csvOf(
      records.map((record) => [
        ...commonCells(record, around),
        ...(standing.length === 0 ? [] : standingCells(record, around)),
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

function standingCells({ body }: HeldRecord, { file, ratings }: Around): Cell[] {
  const rating = ratings.get(`${file.keptId(String(body.positionId))} ${body.action}`)
  return rating === undefined ? ['Not on file', '', ''] : [rating.level, ...sourcesAndDates(rating)]
}

const byPositionAndAction = (ratings: readonly RatingOnFile[]) =>
  new Map(ratings.map((rating) => [`${rating.positionId} ${rating.action}`, rating]))

const sourcesAndDates = ({ sources }: RatingOnFile): [string, string] => [
  sources.map(({ source }) => source).join(' | '),
  sources.map(({ saidAt }) => saidAt.slice(0, 10)).join(' | '),
]

const ratingColumns = [
  'maker',
  'range',
  'models',
  'position',
  'action',
  'level',
  'sources',
  'dates',
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
  'positionId',
]

function ratingRow(rating: RatingOnFile): Cell[] {
  return [
    rating.maker,
    rating.range,
    rating.models.join(' | '),
    rating.position,
    rating.action,
    rating.level,
    ...sourcesAndDates(rating),
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
    rating.positionId,
  ]
}

/** @example '162 (distributor 2024-03-01)' */
const rivalCell = ({ pascals, sources }: RatingOnFile['rivals'][number]): string =>
  `${pascals} (${sources.map(({ source, saidAt }) => `${source} ${saidAt.slice(0, 10)}`).join(', ')})`

const readMe = (now: Date): string =>
  [
    `Everything on file on ${now.toISOString()}, as tables.`,
    '',
    'Each table is CSV by RFC 4180: UTF-8 with its mark, commas, CR LF, the names of the columns in the first line.',
    'The unit of a number stands behind the name of its column, as its UCUM code.',
    'ratings.csv has each rating with its level, its sources and their dates. A number without them is no setpoint:',
    'copy none without its line, and no other value without the sources behind it. The standing is that of a furnace of',
    'which nothing more is known.',
    'Pressures are magnitudes; the column “sense” says suction or pressure.',
    'A text that begins with = + - or @ has an apostrophe in front, so that no spreadsheet runs it. Take it off to have',
    'the text letter for letter. Numbers have none.',
    'What was withdrawn is in the tables, with who withdrew it, when and why. What was withheld says [withheld].',
    'The JSON export is the one that can be taken into an empty server.',
    '',
  ].join('\r\n')
