import type { TeamFile } from '@/lib/records/fold/teamFile'

type Held = NonNullable<ReturnType<TeamFile['records']['get']>>

/** Kinds of which no fact of a case is made. */
export const besideTheFacts: ReadonlySet<string> = new Set([
  'maker',
  'equipment range',
  'supersession',
  'report',
  'settlement',
  'rating request',
  'call attempt',
  'answer seen',
  'asks too',
  'promise',
  'organisation',
  'preference',
  'photo',
  'tag',
  'warranty answer',
  // What they take back, bring in or blank is another record, which differs itself.
  'import',
  'withdrawal',
  'withholding',
])

/** Kinds that are of one furnace: by their own word, by their case, or by their notice. */
const ofOneFurnace: ReadonlySet<string> = new Set([
  'furnace',
  'case',
  'visit',
  'ending',
  'finding',
  'reading',
  'combustion test',
  'repair',
  'switch check',
  'danger answer',
  'fitted part',
  'found fitted',
  'baseline',
  'shut-down notice',
  'lifting',
])

/** Records compared between two turns of the screen. */
const atOnce = 2000

/**
 * The furnaces whose cases may have other facts in one team file than in another; 'any' where something differs that
 * is of all furnaces: a part, a switch position, a gauge, or which records are one. What a furnace's cases amount to is
 * made of its own records beside these, since no record is taken in whose case, visit and furnace do not belong together.
 */
export function* touchedFurnaces(
  one: TeamFile,
  other: TeamFile,
): Generator<void, ReadonlySet<string> | 'any'> {
  const touched = new Set<string>()
  let compared = 0
  for (const [file, against] of [
    [one, other],
    [other, one],
  ] as const)
    for (const [id, held] of file.records) {
      compared += 1
      if (compared % atOnce === 0) yield
      if (besideTheFacts.has(held.kind) || isTheSame(held, against.records.get(id))) continue
      if (!ofOneFurnace.has(held.kind)) return 'any'
      const furnaceId = furnaceOf(file, held)
      if (furnaceId !== undefined) touched.add(file.keptId(furnaceId))
    }
  return touched
}

/** A record that nothing was done to keeps its body through every fold. */
const isTheSame = ({ entry, seq }: Held, other: Held | undefined): boolean =>
  other !== undefined &&
  entry.body === other.entry.body &&
  entry.at === other.entry.at &&
  entry.by === other.entry.by &&
  entry.withdrawn?.id === other.entry.withdrawn?.id &&
  entry.sameAs === other.entry.sameAs &&
  seq === other.seq

/** The furnace that a record is of; undefined where what it names is not on this device, so that it says nothing yet. */
function furnaceOf(file: TeamFile, { kind, entry }: Held): string | undefined {
  if (kind === 'furnace') return entry.id
  const { furnaceId, caseId, noticeId } = entry.body as Record<string, string | undefined>
  if (furnaceId !== undefined) return furnaceId
  if (caseId !== undefined) return file.cases.get(file.keptId(caseId))?.body.furnaceId
  return noticeId === undefined ? undefined : file.shutDownNotices.get(noticeId)?.body.furnaceId
}
