import { seededRandom } from '@/lib/core/seeded'
import type { ElevationBand } from '@/lib/core/vocabulary'
import type { PartBody } from '@/lib/records/kinds/part'
import { type Book, openBook, type Said } from './book'
import { type Position, positionNamed } from './catalogue'
import { type MakerKey, makers } from './makers'
import { demoPeople, type PersonKey } from './people'
import { places } from './positions'
import { trueRating } from './ratings'
import { coverage, type Report, readSays } from './reports'
import { held, typeInCatalogue } from './typeInCatalogue'
import type { SwitchPoints } from './writing'

/** Which of a maker's elevation bands and of a family's revision ranges, counted from 0. */
export type Which = { band?: number; revision?: number }

export type PartSaid = Which & { at: string; by: PersonKey; on: string; note?: string } & Partial<PartBody>

export type Part = { id: string; number: string; on: string }

/** The demo company at work: what is on file of it so far, and the means to add to it. */
export type Team = {
  say(said: Said): string
  records: Book['records']
  /** How many reports are on file at a position, or at all. */
  reportCount(at?: string): number
  makerId(key: MakerKey): string
  rangeId(key: string): string
  positionId(key: string): string
  furnaceId(siteLabel: string): string
  gaugeId(name: string): string
  /** What the switch is really set to. */
  points(at: string, which?: Which): SwitchPoints
  band(at: string, band: number): ElevationBand
  /** Adds a factory part with the maker's next number, unless told otherwise. */
  part(said: PartSaid): Part
  /** The factory part of a position, added the first time it is asked for. */
  factoryPart(said: PartSaid): Part
  /** The same, but undefined where it was first asked for on a later day. */
  factoryPartBy(said: PartSaid): Part | undefined
  /** Adds one record for each number in the words; the ids are in the order of the words. */
  report(report: Report): string[]
}

/** A new team with its makers, ranges, positions, gauges and furnaces on file, and nothing about any rating. */
export function openTeam(seed: number): Team {
  const book = openBook(seededRandom(seed))
  const onFile = typeInCatalogue(book)
  const partsMade = new Map<MakerKey, number>()
  const factoryParts = new Map<string, Part>()
  const reported: string[] = []

  function part({ at, by, on, band = 0, revision = 0, note, ...given }: PartSaid): Part {
    const position = positionNamed(at)
    const { maker, family, sizeIndex } = position.range
    const made = partsMade.get(maker) ?? 0
    partsMade.set(maker, made + 1)
    const number = given.partNumber ?? makers[maker].partNumber(3 * made + 4)
    const page = 12 + 3 * sizeIndex + band + revision
    const body: PartBody = {
      class: 'factory',
      fieldAdjustable: false,
      makerId: held(onFile.makers, maker),
      positionIds: [held(onFile.positions, at)],
      listedIn: `${family.name} parts list, page ${page}`,
      note,
      ...given,
      partNumber: number,
    }
    return { id: book.say({ kind: 'part', by, on, body }), number, on }
  }

  function factoryPart(said: PartSaid): Part {
    const key = `${said.at} ${said.band ?? 0} ${said.revision ?? 0}`
    const known = factoryParts.get(key) ?? part(said)
    factoryParts.set(key, known)
    return known
  }

  return {
    say: book.say,
    records: book.records,
    reportCount: (at) => (at === undefined ? reported : reported.filter((each) => each === at)).length,
    makerId: (key) => held(onFile.makers, key),
    rangeId: (key) => held(onFile.ranges, key),
    positionId: (key) => held(onFile.positions, key),
    furnaceId: (label) => held(onFile.furnaces, label),
    gaugeId: (name) => held(onFile.gauges, name),
    points: (at, { band = 0, revision = 0 } = {}) => trueRating(positionNamed(at), band, revision),
    band: (at, band) => bandOf(positionNamed(at), band),
    part,
    factoryPart,
    factoryPartBy(said) {
      const known = factoryPart(said)
      return known.on <= said.on ? known : undefined
    },
    report(report) {
      const { kind, stage } = places[positionNamed(report.at).place]
      const said: string[] = []
      for (const read of readSays(report)) {
        reported.push(report.at)
        const body = {
          positionId: held(onFile.positions, report.at),
          furnaceId: report.furnace && held(onFile.furnaces, report.furnace),
          asWritten: report.says,
          ...read,
          kind,
          between: report.between ?? 'not stated',
          tap: report.tap ?? 'not stated',
          stage: report.stage ?? stage,
          source: report.source,
          proof: report.proof,
          readBack: report.readBack,
          secondPersonId: report.second && demoPeople[report.second].id,
          origin: report.origin,
          saidBy: report.saidBy,
          saidOn: report.saidOn,
          readOffPart: report.readOffPart,
          partNumber: report.partNumber,
          ...coverage(report.covers),
          gaugeId: report.gaugeId,
          requestId: report.requestId,
          note: report.note,
        }
        said.push(book.say({ kind: 'report', by: report.by, on: report.on, with: said[0], body }))
      }
      return said
    },
  }
}

function bandOf({ range }: Position, band: number): ElevationBand {
  const found = makers[range.maker].bands[band]
  if (found === undefined) throw new RangeError(`${range.key} has no elevation band ${band}`)
  return found
}
