import { positionNamed } from './catalogue'
import { makers } from './makers'
import { counterVoices, type DistributorKey, distributors } from './names'
import type { PersonKey } from './people'
import { places } from './positions'
import type { Report } from './reports'
import type { Team, Which } from './team'
import { dictated, sheetLine } from './writing'

/** What is told of one position on one day; the rest has the source's usual form. */
export type Told = Which & { at: string; by: PersonKey; on: string } & Partial<Report>

const coversBand = (team: Team, { at, band = 0, revision = 0 }: Told): Report['covers'] => ({
  elevation: team.band(at, band),
  revisions: revisionsOf(at, revision),
})

function revisionsOf(at: string, revision: number) {
  const range = positionNamed(at).range.family.revisions?.[revision]
  if (range === undefined) return undefined
  const { adds: _adds, ...ends } = range
  return ends
}

/** A line of the maker's current sheet: both points, with everything that belongs to them. */
export function page(team: Team, told: Told): string[] {
  const { at } = told
  const { range, place, running } = positionNamed(at)
  const { between, tap, sense } = places[place]
  const name = `${range.family.name} service sheet`
  const proof = {
    kind: 'document' as const,
    name,
    page: String(4 + (running % 9)),
    edition: told.on < '2024' ? '2022' : '2024',
  }
  return team.report({
    source: 'current literature',
    says: sheetLine(team.points(at, told)),
    covers: coversBand(team, told),
    sense,
    between,
    tap,
    proof,
    origin: `${name} page ${proof.page} ${proof.edition}`,
    ...told,
  })
}

/** The label on the factory switch in one furnace; it covers that furnace. */
export function label(team: Team, told: Told & { furnace?: string }): string[] {
  const { at, by, on, band, revision, furnace } = told
  const { range, place } = positionNamed(at)
  const part = told.readOffPart ?? team.factoryPart({ at, by, on, band, revision }).id
  return team.report({
    source: 'factory switch label',
    says: makers[range.maker].label(team.points(at, told)),
    covers: furnace === undefined ? coversBand(team, told) : 'this furnace',
    sense: places[place].sense,
    readOffPart: part,
    origin: `switch in hand ${furnace ?? part}`,
    ...told,
  })
}

/** What factory technical support said on the telephone, read back, with a reference. */
export function support(team: Team, told: Told & { reference: string }): string[] {
  const { reference, ...rest } = told
  const organisation = makers[positionNamed(told.at).range.maker].technicalLine
  return team.report({
    source: 'factory support',
    says: dictated(team.points(told.at, told)),
    covers: coversBand(team, told),
    sense: places[positionNamed(told.at).place].sense,
    readBack: true,
    proof: { kind: 'call reference', organisation, reference },
    origin: `call ${organisation} ${reference}`,
    ...rest,
  })
}

/** What a distributor's counter read out on the telephone: read back, unless told otherwise. */
export function counter(
  team: Team,
  told: Told & { reference?: string; distributor?: DistributorKey },
): string[] {
  const { reference, distributor = 'ridge', ...rest } = told
  const organisation = distributors[distributor]
  const voice =
    counterVoices[(positionNamed(told.at).running + (reference?.length ?? 0)) % counterVoices.length]
  return team.report({
    source: 'distributor',
    says: dictated(team.points(told.at, told)),
    covers: coversBand(team, told),
    readBack: true,
    saidBy: `Counter, ${voice}`,
    ...(reference === undefined
      ? {}
      : {
          proof: { kind: 'call reference' as const, organisation, reference },
          origin: `call ${organisation} ${reference}`,
        }),
    ...rest,
  })
}
