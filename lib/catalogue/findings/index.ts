import type { Observations } from '@/lib/core/diagnosis'
import type { DangerCode } from '@/lib/core/guard'
import { combustionAndCabinetFindings } from './combustionAndCabinet'
import { condensateFindings } from './condensate'
import { electricalAndPartFindings } from './electricalAndPart'
import { findingEntry } from './entry'
import { hoseAndPortFindings } from './hoseAndPort'
import { readingFindings } from './readings'
import { sequenceFindings } from './sequence'
import { soundFindings } from './sound'
import { timeAndWeatherFindings } from './timeAndWeather'
import type { FindingEntry, FindingGroup, WrittenFinding } from './types'
import { ventIntakeOutdoorsFindings } from './ventIntakeOutdoors'

export { retiredFindings } from './retiredFindings'
export {
  type FindingEntry,
  findingGroups,
  seenOrRuledOut,
} from './types'

const written = {
  ...sequenceFindings,
  ...soundFindings,
  ...timeAndWeatherFindings,
  ...ventIntakeOutdoorsFindings,
  ...condensateFindings,
  ...hoseAndPortFindings,
  ...readingFindings,
  ...electricalAndPartFindings,
  ...combustionAndCabinetFindings,
}

/** Ids are kept for ever, because cases on file name them; one that is given up moves to retiredFindings. */
export type FindingId = keyof typeof written

type Written = typeof written

/** The values of one finding, as they are stored and shown. */
export type ValueOf<Id extends FindingId> = Written[Id] extends { values: readonly (infer Value)[] }
  ? Value
  : 'seen' | 'ruled out'

const group = (name: FindingGroup, findings: Readonly<Record<string, WrittenFinding>>): FindingEntry[] =>
  Object.entries(findings).map(([id, finding]) => findingEntry(id, name, finding))

/** Every finding, group by group, in the order in which it is offered. */
export const findings: readonly FindingEntry[] = [
  ...group('sequence', sequenceFindings),
  ...group('sound', soundFindings),
  ...group('time and weather', timeAndWeatherFindings),
  ...group('vent, intake and outdoors', ventIntakeOutdoorsFindings),
  ...group('condensate', condensateFindings),
  ...group('hose and port', hoseAndPortFindings),
  ...group('readings', readingFindings),
  ...group('electrical and part identity', electricalAndPartFindings),
  ...group('combustion and cabinet', combustionAndCabinetFindings),
]

const byId: ReadonlyMap<string, FindingEntry> = new Map(findings.map((finding) => [finding.id, finding]))

/** A finding of today by its id, as a record or a screen names it. */
export const findingById = (id: string): FindingEntry | undefined => byId.get(id)

/** The danger that a finding is at this value, if it is one. */
export function dangerValueOf(id: string, value: string): DangerCode | undefined {
  const danger = findingById(id)?.danger
  return danger?.value === value ? danger.code : undefined
}

/** Observations in the catalogue's own ids and values, checked by the compiler. */
export type CatalogueObservations = { readonly [Id in FindingId]?: ValueOf<Id> } & Observations
