import { combustionAirCauses } from './combustionAir'
import { condensateCauses } from './condensate'
import { electricalCauses } from './electrical'
import { elevationCauses } from './elevation'
import { causesOf } from './entry'
import { exchangerCauses } from './exchanger'
import { hoseAndPortCauses } from './hoseAndPort'
import { inducerCauses } from './inducer'
import { installationCauses } from './installation'
import { switchCauses } from './theSwitch'
import type { CauseEntry } from './types'
import { ventCauses } from './vent'

export {
  type CauseEntry,
  type CauseGroup,
  causeGroups,
} from './types'

/** Every cause, group by group. Ids are kept for ever, because cases on file name them. */
export const causes: readonly CauseEntry[] = [
  ...causesOf('vent path', ventCauses),
  ...causesOf('combustion-air path', combustionAirCauses),
  ...causesOf('condensate drainage', condensateCauses),
  ...causesOf('inducer', inducerCauses),
  ...causesOf('hose and port', hoseAndPortCauses),
  ...causesOf('heat exchanger', exchangerCauses),
  ...causesOf('electrical and control', electricalCauses),
  ...causesOf('installation', installationCauses),
  ...causesOf('elevation', elevationCauses),
  ...causesOf('the switch itself', switchCauses),
]

const byId: ReadonlyMap<string, CauseEntry> = new Map(causes.map((cause) => [cause.id, cause]))

/** A cause of the catalogue by its id, as a record or a ranking names it. */
export const causeById = (id: string): CauseEntry | undefined => byId.get(id)

/** Minutes of each cause's confirming test, by cause id: what repairOrder takes. */
export const confirmMinutes: Readonly<Record<string, number>> = Object.fromEntries(
  causes.map(({ id, confirm }) => [id, confirm.minutes]),
)
